namespace Laydown.Plan.Week;

/// <summary>Minutes and money of each change between two runs.</summary>
/// <remarks>
/// One person works at the material (stock, thickness, lay, in turn) while the press looks after its ink (white in or out, layers, in turn): of the two the longer one counts.
/// The mode is loaded after both. The defaults are common practice, no source.
/// </remarks>
/// <param name="Always">Minutes between any two runs: file, first piece.</param>
/// <param name="RollAfterBoards">Minutes to thread a roll after boards.</param>
/// <param name="BoardsAfterRoll">Minutes to clear a roll for boards.</param>
/// <param name="OtherStock">Minutes for another stock of the same form.</param>
/// <param name="OtherThickness">Minutes for the gap and five measured points.</param>
/// <param name="OtherLay">Minutes for zones and pins.</param>
/// <param name="WhiteAfterNone">Minutes to stir white and check its nozzles.</param>
/// <param name="NoneAfterWhite">Minutes to rest white.</param>
/// <param name="OtherLayers">Minutes for another order of layers.</param>
/// <param name="OtherMode">Minutes for another mode.</param>
/// <param name="WhiteCents">Money of the ink flushed where white begins, cents.</param>
/// <param name="StockCents">Money of the material spoilt at another stock, cents.</param>
public sealed record ChangeRates(
    int Always = 4, int RollAfterBoards = 25, int BoardsAfterRoll = 15, int OtherStock = 6, int OtherThickness = 5, int OtherLay = 4, int WhiteAfterNone = 12,
    int NoneAfterWhite = 3, int OtherLayers = 4, int OtherMode = 2, int WhiteCents = 350, int StockCents = 150)
{
    /// <summary>Minutes from a run to the next; from an unknown state (null) all that the next needs.</summary>
    public int Minutes(WeekTraits? from, WeekTraits to) => Always + Math.Max(Sum(Material(from, to)), Sum(Ink(from, to))) + Sum(Mode(from, to));

    /// <summary>How those minutes add up, in words.</summary>
    public string Because(WeekTraits? from, WeekTraits to)
    {
        (string What, int Minutes)[] material = [.. Material(from, to)], ink = [.. Ink(from, to)];
        (string What, int Minutes)[] longer = Sum(material) >= Sum(ink) ? material : ink, shorter = longer == material ? ink : material;
        string beside = Sum(shorter) > 0 ? Invariant($"; meanwhile {Words(shorter)}") : "";
        return Words([("file and first piece", Always), .. longer, .. Mode(from, to)]) + beside;
    }

    /// <summary>Cents from a run to the next.</summary>
    public int Cents(WeekTraits? from, WeekTraits to) =>
        (to.NeedsWhite && !(from?.NeedsWhite ?? false) ? WhiteCents : 0) + (from?.StockId == to.StockId ? 0 : StockCents);

    private IEnumerable<(string What, int Minutes)> Material(WeekTraits? from, WeekTraits to)
    {
        if (from?.IsRoll != to.IsRoll && (to.IsRoll || from is not null))
            yield return to.IsRoll ? ("roll threaded", RollAfterBoards) : ("roll cleared", BoardsAfterRoll);
        if (from?.StockId != to.StockId)
            yield return ("other stock", OtherStock);
        if (from?.ThicknessMm != to.ThicknessMm)
            yield return ("gap and five points", OtherThickness);
        if (from?.Lay != to.Lay)
            yield return ("zones and pins", OtherLay);
    }

    private IEnumerable<(string What, int Minutes)> Ink(WeekTraits? from, WeekTraits to)
    {
        if ((from?.NeedsWhite ?? false) != to.NeedsWhite)
            yield return to.NeedsWhite ? ("white stirred and checked", WhiteAfterNone) : ("white rested", NoneAfterWhite);
        if (from?.Layers != to.Layers)
            yield return ("other layers", OtherLayers);
    }

    private IEnumerable<(string What, int Minutes)> Mode(WeekTraits? from, WeekTraits to) => from?.ModeId == to.ModeId ? [] : [("mode", OtherMode)];

    private static int Sum(IEnumerable<(string What, int Minutes)> parts) => parts.Sum(p => p.Minutes);

    private static string Words(IEnumerable<(string What, int Minutes)> parts) => string.Join(" + ", parts.Select(p => Invariant($"{p.What} {p.Minutes}")));
}
