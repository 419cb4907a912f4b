using Laydown.Layout.Sheets;
using Laydown.Plan.Costs;
using Laydown.Plan.Log;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Press.Machines;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;

namespace Laydown.Plan.Runs;

/// <summary>All that is known before a run is planned.</summary>
/// <param name="RunId">Its id, unique in the shop.</param>
/// <param name="Press">The press.</param>
/// <param name="InkSet">The inks in it.</param>
/// <param name="Stock">The stock.</param>
/// <param name="Condition">The print condition.</param>
/// <param name="Rates">The shop's rates.</param>
/// <param name="Stack">The layers.</param>
/// <param name="Items">Its items; at least one, each laid out on at least one sheet.</param>
/// <param name="Sheets">The layouts; piece ids are item ids, for panels followed by <c>/1</c>, <c>/2</c> …</param>
/// <param name="Belt">How the sheets lie on the belt.</param>
public sealed record RunRequest(
    string RunId,
    PressDescription Press,
    InkSet InkSet,
    Stock Stock,
    PrintCondition Condition,
    ShopRates Rates,
    LayerStack Stack,
    IReadOnlyList<PlannedItem> Items,
    IReadOnlyList<SheetLayout> Sheets,
    BeltPlace Belt)
{
    /// <summary>Figures bands for the choice of the mode; null where nobody does.</summary>
    public BandScore.Source? Bands { get; init; }

    /// <summary>Further stocks: blanks of other sizes, or the roll beside the first where it is another one. Their sheets name them.</summary>
    public IReadOnlyList<Stock> Beside { get; init; } = [];

    /// <summary>All stocks of the run, the first first.</summary>
    public IReadOnlyList<Stock> Stocks => [Stock, .. Beside];

    /// <summary>The stock of a sheet.</summary>
    public Stock StockOf(SheetLayout sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        return Beside.FirstOrDefault(s => string.Equals(s.Id, sheet.StockId, StringComparison.Ordinal)) ?? Stock;
    }

    /// <summary>The sheets of one of its stocks.</summary>
    public IEnumerable<SheetLayout> SheetsOf(Stock stock) => Sheets.Where(s => StockOf(s) == stock);

    /// <summary>Minutes the press is worked until the run is due; null where nobody knows.</summary>
    public double? MinutesLeft { get; init; }

    /// <summary>The mode a person takes in place of the one proposed; null for none.</summary>
    public ModeOverrule? Overrule { get; init; }

    /// <summary>What the log teaches about minutes; null where times stand as reckoned.</summary>
    public EstimateModel? Learnt { get; init; }

    /// <summary>Printed area of an item over all sheets, m².</summary>
    public double AreaM2(string itemId) => Sheets.Sum(s => s.Repeats * s.Placements.Where(p => IsOf(p.PieceId, itemId)).Sum(p => p.Place.Size.AreaM2));

    /// <summary>Pieces of an item over all sheets; of a paneled item the copies of its first panel.</summary>
    public int Pieces(string itemId) => Sheets.Sum(s => s.Repeats * s.Placements.Count(p =>
        string.Equals(p.PieceId, itemId, StringComparison.Ordinal) || string.Equals(p.PieceId, itemId + "/1", StringComparison.Ordinal)));

    private static bool IsOf(string pieceId, string itemId) =>
        string.Equals(pieceId, itemId, StringComparison.Ordinal) || pieceId.StartsWith(itemId + "/", StringComparison.Ordinal);
}
