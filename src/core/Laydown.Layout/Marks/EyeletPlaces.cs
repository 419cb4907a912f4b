using Laydown.Measures;

namespace Laydown.Layout.Marks;

/// <summary>Where eyelets and holes go along the edges of a finished piece.</summary>
public static class EyeletPlaces
{
    /// <summary>Places of a number of eyelets, one in each corner of the edges that carry them, the others evenly between.</summary>
    /// <remarks>
    /// The largest distance between neighbours is as small as the number allows; of equal answers the one with more along the earlier edge in the
    /// order of <paramref name="edges"/>. One eyelet stands in the middle of the first edge.
    /// </remarks>
    /// <param name="finished">Finished size, mm.</param>
    /// <param name="count">How many; at least 1.</param>
    /// <param name="insetMm">Distance of the centres from the edge, mm; less than half of either side.</param>
    /// <param name="edges">Edges that carry them, each once.</param>
    /// <returns>Centres, mm from the lower left corner of the finished piece.</returns>
    /// <exception cref="ArgumentException">No edge, or an edge twice.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The count is under 1, or the inset leaves nothing between.</exception>
    public static IReadOnlyList<PointMm> Of(SizeMm finished, int count, double insetMm, IReadOnlyList<PieceEdge> edges)
    {
        Bounds.NotEmpty(edges);
        Bounds.Within(count, 1, 100_000);
        Bounds.Within(insetMm, 0, Math.Min(finished.WidthMm, finished.HeightMm) / 2);
        if (edges.Distinct().Count() != edges.Count)
            throw new ArgumentException(Invariant($"Edges: found {string.Join(", ", edges)}; wanted each once."), nameof(edges));

        RectMm frame = new RectMm(0, 0, finished.WidthMm, finished.HeightMm).Grown(-insetMm);
        List<(PointMm From, PointMm To)> sides = [.. edges.Select(e => Side(frame, e))];
        if (count == 1)
            return [Between(sides[0], 1, 2)];

        // Corners first, in the order of the edges; then one more interval wherever the widest is.
        List<PointMm> places = [.. sides.SelectMany(s => new[] { s.From, s.To }).Distinct().Take(count)];
        int[] parts = [.. sides.Select(_ => 1)];
        for (int left = count - places.Count; left > 0; left--)
            parts[Enumerable.Range(0, sides.Count).MaxBy(i => Length(sides[i]) / parts[i])]++;
        places.AddRange(sides.SelectMany((side, i) => Enumerable.Range(1, parts[i] - 1).Select(n => Between(side, n, parts[i]))));
        return places;
    }

    /// <summary>How many eyelets keep the distance between neighbours within a limit.</summary>
    /// <param name="finished">Finished size, mm.</param>
    /// <param name="mostMm">Most between two neighbours, mm; over 0.</param>
    /// <param name="insetMm">Distance of the centres from the edge, mm.</param>
    /// <param name="edges">Edges that carry them.</param>
    public static int Count(SizeMm finished, double mostMm, double insetMm, IReadOnlyList<PieceEdge> edges)
    {
        Bounds.NotEmpty(edges);
        Bounds.Within(mostMm, 1, 1_000_000);
        RectMm frame = new RectMm(0, 0, finished.WidthMm, finished.HeightMm).Grown(-insetMm);
        List<(PointMm From, PointMm To)> sides = [.. edges.Select(e => Side(frame, e))];
        return sides.SelectMany(s => new[] { s.From, s.To }).Distinct().Count() + sides.Sum(s => Math.Max(1, (int)Math.Ceiling((Length(s) / mostMm) - 1e-9)) - 1);
    }

    private static (PointMm From, PointMm To) Side(RectMm frame, PieceEdge edge) => edge switch
    {
        PieceEdge.Top => (new(frame.XMm, frame.TopMm), new(frame.RightMm, frame.TopMm)),
        PieceEdge.Bottom => (new(frame.XMm, frame.YMm), new(frame.RightMm, frame.YMm)),
        PieceEdge.Left => (new(frame.XMm, frame.TopMm), new(frame.XMm, frame.YMm)),
        _ => (new(frame.RightMm, frame.TopMm), new(frame.RightMm, frame.YMm)),
    };

    private static PointMm Between((PointMm From, PointMm To) side, int number, int of) => new(
        side.From.XMm + ((side.To.XMm - side.From.XMm) * number / of), side.From.YMm + ((side.To.YMm - side.From.YMm) * number / of));

    private static double Length((PointMm From, PointMm To) side) => Math.Abs(side.To.XMm - side.From.XMm) + Math.Abs(side.To.YMm - side.From.YMm);
}
