using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Press.Machines;
using Laydown.Press.Stocks;
using Laydown.Shop.Layers;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Run;

/// <summary>A run with everything it refers to, so that files and sheets can be made from it alone.</summary>
/// <param name="ShopName">The shop.</param>
/// <param name="Run">The run.</param>
/// <param name="Press">Its press.</param>
/// <param name="Mode">Its mode.</param>
/// <param name="InkSet">Its inks.</param>
/// <param name="Stock">Its stock.</param>
/// <param name="Condition">Its print condition.</param>
/// <param name="ProfilePath">Full path of the condition's ICC profile.</param>
/// <param name="Currency">Currency as printed.</param>
/// <param name="Items">Its items.</param>
/// <param name="Optics">Optics of its inks, or null while there are none.</param>
public sealed record RunContext(
    string ShopName,
    Laydown.Plan.Runs.Run Run,
    PressDescription Press,
    Mode Mode,
    InkSet InkSet,
    Stock Stock,
    PrintCondition Condition,
    string ProfilePath,
    string Currency,
    IReadOnlyList<ItemRecord> Items,
    InkOptics? Optics = null)
{
    /// <summary>Further stocks of the run: blanks of other sizes, or the roll beside the first; its sheets name them.</summary>
    public IReadOnlyList<Stock> Beside { get; init; } = [];

    /// <summary>What two people measured and let go, times by the shop's clock; null while nobody did.</summary>
    public Laydown.Plan.Runs.RunRelease? LetGo { get; init; }

    /// <summary>Where the shop's pages are served, for codes on papers; empty where the shop does not say.</summary>
    public string Address { get; init; } = "";

    /// <summary>The stock of a sheet.</summary>
    public Stock StockOf(Laydown.Layout.Sheets.SheetLayout sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        return Beside.FirstOrDefault(s => string.Equals(s.Id, sheet.StockId, StringComparison.Ordinal)) ?? Stock;
    }

    /// <summary>Looks that items are printed from, by item; items that are not named here are separated from their pages.</summary>
    public IReadOnlyDictionary<string, StoredLook> Looks { get; init; } = new Dictionary<string, StoredLook>();
}
