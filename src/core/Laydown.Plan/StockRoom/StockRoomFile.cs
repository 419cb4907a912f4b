using Laydown.Press.Stocks;

namespace Laydown.Plan.StockRoom;

/// <summary>A stock room in a file of its own, with moves to be done in it.</summary>
/// <param name="Stocks">What is kept.</param>
/// <param name="Lots">The lots, each id once.</param>
/// <param name="Moves">What is done, in order; none to look only.</param>
public sealed record StockRoomFile(IReadOnlyList<Stock> Stocks, IReadOnlyList<StockLot> Lots, IReadOnlyList<StockMove> Moves);
