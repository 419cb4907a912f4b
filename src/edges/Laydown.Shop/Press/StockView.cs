using Laydown.Plan.StockRoom;

namespace Laydown.Shop.Press;

/// <summary>The stock room as it stands.</summary>
/// <param name="Lines">Each stock with what is there, kept back, wanted and to be ordered.</param>
/// <param name="Lots">Lots that are not used up, by stock, then by id.</param>
/// <param name="Moves">What was done last, newest first.</param>
/// <param name="Runs">What planned runs need of each of their stocks; null where no runs are known.</param>
public sealed record StockView(IReadOnlyList<StockLine> Lines, IReadOnlyList<StockLot> Lots, IReadOnlyList<StockMove> Moves, IReadOnlyList<RunStockLine>? Runs = null);
