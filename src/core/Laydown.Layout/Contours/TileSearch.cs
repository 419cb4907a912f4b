using Laydown.Layout.Packing;

namespace Laydown.Layout.Contours;

/// <summary>Fills boards without any waste, by depth first: the corner of the room that fewest tiles fit into is filled next; restarts by chance.</summary>
/// <remarks>
/// Without waste every corner of the room under a half turn holds a corner of a tile whose side lies on the side of the room, so only
/// tiles with a side of that very direction come into question. From memory.
/// </remarks>
internal sealed class TileSearch(TileSet set, Chance chance)
{
    private const int FirstNodes = 400;

    private readonly record struct Candidate(PlacedTile Placed, double Worth);

    private readonly TileRoom room = new();
    private readonly bool[] used = new bool[set.Pieces];
    private readonly List<PlacedTile> placed = [];
    private readonly List<(TileEdge In, TileEdge Out)> corners = [];
    private int boardStart;
    private long nodes, limit;

    /// <summary>All tiles board by board, or null where none was found within the nodes.</summary>
    internal List<List<PlacedTile>>? Search(long most, CancellationToken stop)
    {
        long total = 0;
        for (int run = 1; total < most && !stop.IsCancellationRequested; run++)
        {
            // Short runs mostly, now and then a long one: 1, 1, 2, 1, 1, 2, 4 ...
            (nodes, limit) = (0, Math.Min(FirstNodes * (long)Luby(run), most - total));
            Array.Clear(used);
            placed.Clear();
            boardStart = 0;
            room.Reset(set.Width, set.Height);
            if (Deepen(stop))
                return ByBoard();
            total += nodes;
        }

        return null;
    }

    private static int Luby(int run)
    {
        int power = 1;
        while (power - 1 < run)
            power *= 2;
        return power - 1 == run ? power / 2 : Luby(run - (power / 2) + 1);
    }

    private bool Deepen(CancellationToken stop)
    {
        if (++nodes > limit || stop.IsCancellationRequested)
            return false;
        int start = boardStart;
        if (room.IsFull)
        {
            if (placed.Count == set.Pieces)
                return true;
            boardStart = placed.Count;
            room.Reset(set.Width, set.Height);
        }

        TileEdge[] saved = [.. room.Edges];
        foreach (Candidate candidate in Fewest().OrderByDescending(c => c.Worth))
        {
            PlacedTile next = candidate.Placed;
            used[next.Tile.Piece] = true;
            placed.Add(next);
            room.Fill(next.Tile, next.At);
            if (Deepen(stop))
                return true;
            placed.RemoveAt(placed.Count - 1);
            used[next.Tile.Piece] = false;
            room.Take(saved);
            if (nodes > limit)
                break;
        }

        boardStart = start;
        return false;
    }

    /// <summary>What fits into the corner that least fits into.</summary>
    private List<Candidate> Fewest()
    {
        List<Candidate>? best = null;
        room.CornersInto(corners);
        bool empty = placed.Count == boardStart;
        foreach ((TileEdge coming, TileEdge going) in corners)
        {
            for (int side = 0; side < 2; side++)
            {
                List<Candidate>? next = Fitting(coming, going, side == 0, best?.Count ?? int.MaxValue);
                if (next is not null)
                    best = next;
                if (best is { Count: 0 })
                    return best;
                if (empty && best is not null)
                    return best;
            }
        }

        return best ?? [];
    }

    /// <summary>Tiles that fit a corner with a side on one of its two sides; null where they are as many as <paramref name="enough"/>.</summary>
    private List<Candidate>? Fitting(TileEdge coming, TileEdge going, bool onGoing, int enough)
    {
        List<Candidate> fitting = [];
        TilePoint outward = going.Way, back = coming.From - coming.To;
        if (!(onGoing ? set.Going : set.Coming).TryGetValue((onGoing ? outward : coming.Way).Direction(), out List<(Tile Tile, int Corner)>? entries))
            return fitting;
        foreach ((Tile tile, int c) in entries)
        {
            if (used[tile.Piece])
                continue;
            TilePoint[] ring = tile.Corners;
            TilePoint before = ring[(c + ring.Length - 1) % ring.Length] - ring[c], after = ring[(c + 1) % ring.Length] - ring[c];
            if (TilePoint.Cross(after, before) <= 0 || TilePoint.Cross(outward, before) <= 0 || TilePoint.Cross(before, back) < 0
                || TilePoint.Cross(outward, after) < 0 || TilePoint.Cross(after, back) <= 0)
                continue;
            TilePoint at = going.From - ring[c];
            if (!IsFree(tile, at))
                continue;
            fitting.Add(new(new(tile, at), Worth(before, after, outward, back)));
            if (fitting.Count >= enough)
                return null;
        }

        return fitting;
    }

    /// <summary>Tiles that fill the angle, and whose sides end where the room's do, come first.</summary>
    private double Worth(TilePoint before, TilePoint after, TilePoint outward, TilePoint back) =>
        chance.Share() + (TilePoint.Cross(before, back) == 0 && TilePoint.Cross(outward, after) == 0 ? 0.6 : 0) + (after == outward ? 0.8 : 0) + (before == back ? 0.8 : 0);

    private bool IsFree(Tile tile, TilePoint at)
    {
        if (at.X + tile.MinX < 0 || at.Y + tile.MinY < 0 || at.X + tile.MaxX > set.Width || at.Y + tile.MaxY > set.Height)
            return false;
        for (int i = boardStart; i < placed.Count; i++)
        {
            if (tile.Overlaps(at, placed[i].Tile, placed[i].At))
                return false;
        }

        return true;
    }

    private List<List<PlacedTile>> ByBoard()
    {
        long board = 2 * set.Width * set.Height, area = 0;
        List<List<PlacedTile>> boards = [];
        foreach (PlacedTile tile in placed)
        {
            if (area % board == 0)
                boards.Add([]);
            boards[^1].Add(tile);
            area += tile.Tile.DoubleArea;
        }

        return boards;
    }
}
