namespace Laydown.Layout.Contours;

/// <summary>The room of a board that tiles have not yet filled: its sides, room on their left.</summary>
internal sealed class TileRoom
{
    private readonly List<TileEdge> edges = [];
    private readonly List<TileEdge> rest = [];

    internal IReadOnlyList<TileEdge> Edges => edges;

    internal bool IsFull => edges.Count == 0;

    internal void Reset(long width, long height)
    {
        edges.Clear();
        TilePoint[] corners = [new(0, 0), new(width, 0), new(width, height), new(0, height)];
        for (int i = 0; i < 4; i++)
            edges.Add(new(corners[i], corners[(i + 1) % 4]));
    }

    internal void Take(IReadOnlyList<TileEdge> saved)
    {
        edges.Clear();
        edges.AddRange(saved);
    }

    /// <summary>Takes the area of a tile away: its sides turned round become sides of the room, and cancel what they lie on.</summary>
    internal void Fill(Tile tile, TilePoint at)
    {
        TilePoint[] corners = tile.Corners;
        for (int i = 0; i < corners.Length; i++)
        {
            rest.Clear();
            rest.Add(new(corners[(i + 1) % corners.Length] + at, corners[i] + at));
            while (rest.Count > 0)
            {
                TileEdge edge = rest[^1];
                rest.RemoveAt(rest.Count - 1);
                if (!Cancels(edge))
                    edges.Add(edge);
            }
        }
    }

    /// <summary>Every corner of the room under a half turn: the side that comes in and the side that goes out.</summary>
    internal void CornersInto(List<(TileEdge In, TileEdge Out)> corners)
    {
        corners.Clear();
        foreach (TileEdge going in edges)
        {
            TilePoint way = going.Way;
            TileEdge? nearest = null;
            foreach (TileEdge coming in edges)
            {
                if (coming.To == going.From && TilePoint.Cross(way, coming.From - coming.To) > 0
                    && (nearest is not { } n || TilePoint.Cross(coming.From - coming.To, n.From - n.To) > 0))
                    nearest = coming;
            }

            if (nearest is { } found)
                corners.Add((found, going));
        }
    }

    /// <summary>Takes an opposite side that shares a stretch with this one, and leaves what is over of both.</summary>
    private bool Cancels(TileEdge edge)
    {
        TilePoint way = edge.Way;
        for (int i = 0; i < edges.Count; i++)
        {
            TileEdge other = edges[i];
            if (TilePoint.Cross(way, other.Way) != 0 || TilePoint.Dot(way, other.Way) >= 0 || TilePoint.Cross(way, other.From - edge.From) != 0)
                continue;
            long end = TilePoint.Dot(way, way), from = TilePoint.Dot(way, other.To - edge.From), to = TilePoint.Dot(way, other.From - edge.From);
            if (to <= 0 || from >= end)
                continue;
            edges.RemoveAt(i);
            AddIf(rest, edge.From, other.To, from > 0);
            AddIf(rest, other.From, edge.To, to < end);
            AddIf(edges, other.From, edge.To, to > end);
            AddIf(edges, edge.From, other.To, from < 0);
            return true;
        }

        return false;
    }

    private static void AddIf(List<TileEdge> list, TilePoint from, TilePoint to, bool wanted)
    {
        if (wanted)
            list.Add(new(from, to));
    }
}
