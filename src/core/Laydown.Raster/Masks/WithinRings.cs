using Laydown.Raster.Tiles;

namespace Laydown.Raster.Masks;

/// <summary>Leaves ink only within closed lines; all else of the picture becomes bare. Hard edges.</summary>
/// <remarks>
/// A pixel lies within where its middle does: an odd number of lines lies to its left, so lines within lines are holes. They lie where they
/// lie in the picture: a tile knows its place.
/// </remarks>
public sealed class WithinRings : ITileStage
{
    private readonly int[][] spans;

    /// <summary>Lines over a picture.</summary>
    /// <param name="rings">Corners of each ring, in columns and rows of the picture from its upper left; the last is joined to the first.</param>
    /// <param name="rows">Rows of the picture.</param>
    public WithinRings(IReadOnlyList<IReadOnlyList<(double Column, double Row)>> rings, int rows)
    {
        ArgumentNullException.ThrowIfNull(rings);
        List<double>[] crossings = [.. Enumerable.Range(0, rows).Select(_ => new List<double>())];
        foreach (IReadOnlyList<(double Column, double Row)> ring in rings)
            for (int i = 0; i < ring.Count; i++)
                Cross(ring[i], ring[(i + 1) % ring.Count], crossings);
        spans = [.. crossings.Select(Borders)];
    }

    /// <summary>No neighbours needed.</summary>
    public int ReachPixels => 0;

    /// <inheritdoc/>
    public int TargetInks(int sourceInks) => sourceInks;

    /// <inheritdoc/>
    public void Run(Tile source, Tile target)
    {
        for (int ink = 0; ink < source.Inks; ink++)
        {
            for (int row = 0; row < target.Rows; row++)
            {
                Span<ushort> line = target.Row(ink, row);
                source.Row(ink, row).CopyTo(line);
                Clear(target.FirstRow + row, target.FirstColumn, line);
            }
        }
    }

    /// <summary>Makes what lies outside bare in a part of one row.</summary>
    /// <param name="row">Row of the picture; beside the picture all is outside.</param>
    /// <param name="firstColumn">Column of the picture that the part starts at.</param>
    /// <param name="part">Values, one for each pixel.</param>
    public void Clear<T>(int row, int firstColumn, Span<T> part)
    {
        int bare = 0;
        foreach ((int from, int to) in Within(row))
        {
            int left = Math.Clamp(from - firstColumn, bare, part.Length), right = Math.Clamp(to - firstColumn, left, part.Length);
            part[bare..left].Clear();
            bare = right;
        }

        part[bare..].Clear();
    }

    private IEnumerable<(int From, int To)> Within(int row)
    {
        if (row < 0 || row >= spans.Length)
            yield break;
        for (int i = 0; i + 1 < spans[row].Length; i += 2)
            yield return (spans[row][i], spans[row][i + 1]);
    }

    // The lower end of a side belongs to it, the upper does not: a line through a corner is crossed once.
    private static void Cross((double Column, double Row) from, (double Column, double Row) to, List<double>[] crossings)
    {
        if (from.Row > to.Row)
            (from, to) = (to, from);
        int first = (int)Math.Clamp(Math.Ceiling(from.Row - 0.5), 0, crossings.Length), last = (int)Math.Clamp(Math.Ceiling(to.Row - 0.5), 0, crossings.Length);
        for (int row = first; row < last; row++)
            crossings[row].Add(from.Column + ((to.Column - from.Column) * (row + 0.5 - from.Row) / (to.Row - from.Row)));
    }

    private static int[] Borders(List<double> crossings)
    {
        crossings.Sort();
        return [.. crossings.Select(x => (int)Math.Clamp(Math.Ceiling(x - 0.5), int.MinValue, int.MaxValue))];
    }
}
