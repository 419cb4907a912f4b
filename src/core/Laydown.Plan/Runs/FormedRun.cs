using Laydown.Plan.Orders;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Press.Machines;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;

namespace Laydown.Plan.Runs;

/// <summary>Items that can be printed under one set-up, before they are laid out.</summary>
/// <param name="Press">The press chosen.</param>
/// <param name="Condition">The print condition.</param>
/// <param name="InkSet">The inks.</param>
/// <param name="Stock">The stock.</param>
/// <param name="Stack">Layers that all its items share; separation names and choke are each item's own.</param>
/// <param name="ModeId">The mode each of them would get; the run's own choice is made once its sheets are known.</param>
/// <param name="Items">The items, earliest due first.</param>
/// <param name="Because">Why this press and why together, in sentences.</param>
public sealed record FormedRun(
    PressDescription Press,
    PrintCondition Condition,
    InkSet InkSet,
    Stock Stock,
    LayerStack Stack,
    string ModeId,
    IReadOnlyList<FormedItem> Items,
    IReadOnlyList<string> Because)
{
    /// <summary>Further stocks of the run: blanks of other sizes than <see cref="Stock"/>, or the one roll that lies beside it on the press (it may be of the same stock).</summary>
    public IReadOnlyList<Stock> Beside { get; init; } = [];

    /// <summary>The stock an item is printed on: of several blanks the one it names.</summary>
    public Stock StockOf(Item item)
    {
        ArgumentNullException.ThrowIfNull(item);
        return Beside.Prepend(Stock).FirstOrDefault(s => string.Equals(s.Id, item.StockId, StringComparison.Ordinal)) ?? Stock;
    }
}
