using Laydown.Layout.Packing;

namespace Laydown.Layout.Contours;

/// <summary>The search for boards without waste, by all workers at once; each call looks further than the one before.</summary>
internal sealed class TileBoards
{
    private readonly ContourJob job;
    private readonly TileSet set;
    private readonly TileSearch[] searches;

    private TileBoards(ContourJob job, TileSet set, IReadOnlyList<Chance> chances) =>
        (this.job, this.set, searches) = (job, set, [.. chances.Select(c => new TileSearch(set, c))]);

    /// <summary>How many boards would be full.</summary>
    internal int Boards => set.Boards;

    /// <summary>The search for a problem, or null where waste cannot be avoided.</summary>
    internal static TileBoards? Of(ContourJob job, IReadOnlyList<Chance> chances) => TileSet.Of(job) is { } set ? new(job, set, chances) : null;

    /// <summary>Full boards, or null where the nodes did not suffice.</summary>
    internal ContourResult? Search(long nodes, CancellationToken stop)
    {
        List<List<PlacedTile>>?[] found = new List<List<PlacedTile>>?[searches.Length];
        Parallel.For(0, searches.Length, w => found[w] = searches[w].Search(nodes, stop));
        return found.FirstOrDefault(f => f is not null) is { } boards ? Result(boards) : null;
    }

    private ContourResult Result(List<List<PlacedTile>> boards)
    {
        ContourStock stock = job.Kinds[0].Stock;
        (double left, double bottom) = (job.Kinds[0].Left, job.Kinds[0].Bottom);
        IReadOnlyList<ContourSheet> sheets =
        [
            .. boards.Select(b => new ContourSheet(stock.Id, [.. b.Select(t => job.SpotAt(
                t.Tile.Piece, t.Tile.Angle, left + (t.At.X * set.Unit), bottom + (t.At.Y * set.Unit)))])),
        ];
        return new(sheets, stock.Area.Bounds.WidthMm, sheets.Count * stock.Cost, 1, []);
    }
}
