using System.Collections.Concurrent;
using System.Text.Json;
using Laydown.Measures;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Shop.Colour;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Run;

/// <summary>Measures each piece once for each print condition: how many are wanted does not change its ink. Another artwork, size or stack is another piece.</summary>
/// <param name="inner">Measures.</param>
internal sealed class RememberedInk(IInkMeasure inner) : IInkMeasure
{
    private const int Most = 512;
    private readonly ConcurrentDictionary<string, Reading<IReadOnlyList<LayerInk>>> known = new(StringComparer.Ordinal);

    /// <inheritdoc/>
    public async Task<Reading<IReadOnlyList<LayerInk>>> MeasureAsync(
        ItemRecord item, PrintCondition condition, InkSet inkSet, string profilePath, CancellationToken cancellation)
    {
        string key = KeyOf(item, condition, inkSet, profilePath);
        if (known.TryGetValue(key, out Reading<IReadOnlyList<LayerInk>>? before))
            return before;
        Reading<IReadOnlyList<LayerInk>> now = await inner.MeasureAsync(item, condition, inkSet, profilePath, cancellation);
        if (known.Count >= Most)
            known.Clear();

        // What could not be read may be there the next time.
        return now.IsTaken ? known[key] = now : now;
    }

    // Everything the ink of a piece follows from, as it stands now: quantity and due date do not.
    private static string KeyOf(ItemRecord item, PrintCondition condition, InkSet inkSet, string profilePath) => JsonSerializer.Serialize(
        new
        {
            Item = item with { Item = item.Item with { Quantity = 1, Due = default }, RunId = null, State = ItemState.Ready, Faults = [] },
            condition,
            inkSet,
            Profile = File.Exists(profilePath) ? File.GetLastWriteTimeUtc(profilePath).Ticks : 0,
        },
        ShopJson.Compact);
}
