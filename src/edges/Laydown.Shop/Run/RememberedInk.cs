using System.Collections.Concurrent;
using Laydown.Measures;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Shop.Colour;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Run;

/// <summary>Measures each piece once for each print condition: how many are wanted does not change its ink.</summary>
/// <param name="inner">Measures.</param>
internal sealed class RememberedInk(IInkMeasure inner) : IInkMeasure
{
    private readonly ConcurrentDictionary<(string Item, string Condition), Reading<IReadOnlyList<LayerInk>>> known = new();

    /// <inheritdoc/>
    public async Task<Reading<IReadOnlyList<LayerInk>>> MeasureAsync(
        ItemRecord item, PrintCondition condition, InkSet inkSet, string profilePath, CancellationToken cancellation)
    {
        (string, string) key = (item.Item.Id, condition.Id);
        if (known.TryGetValue(key, out Reading<IReadOnlyList<LayerInk>>? before))
            return before;
        return known[key] = await inner.MeasureAsync(item, condition, inkSet, profilePath, cancellation);
    }
}
