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
    public int Minutes(WeekTraits? from, WeekTraits to)
    {
        int material = (from?.IsRoll == to.IsRoll ? 0 : to.IsRoll ? RollAfterBoards : from is null ? 0 : BoardsAfterRoll)
            + (from?.StockId == to.StockId ? 0 : OtherStock) + (from?.ThicknessMm == to.ThicknessMm ? 0 : OtherThickness) + (from?.Lay == to.Lay ? 0 : OtherLay);
        int ink = ((from?.NeedsWhite ?? false) == to.NeedsWhite ? 0 : to.NeedsWhite ? WhiteAfterNone : NoneAfterWhite) + (from?.Layers == to.Layers ? 0 : OtherLayers);
        return Always + Math.Max(material, ink) + (from?.ModeId == to.ModeId ? 0 : OtherMode);
    }

    /// <summary>Cents from a run to the next.</summary>
    public int Cents(WeekTraits? from, WeekTraits to) =>
        (to.NeedsWhite && !(from?.NeedsWhite ?? false) ? WhiteCents : 0) + (from?.StockId == to.StockId ? 0 : StockCents);
}
