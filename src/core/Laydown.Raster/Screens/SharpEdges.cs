using System.Numerics;
using Laydown.Measures;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Screens;

/// <summary>Takes the soft flank off hard edges at press resolution, so that text and bar codes stay sharp whatever the screen.</summary>
/// <remarks>
/// Looks at the lightest and the darkest of the px around, 7 × 7 or as many as a flank is wide. Where they differ by at least the contrast, the pixel lies on an edge and
/// takes whichever it
/// is nearer to; nearly full becomes full and nearly bare becomes bare, and of both a screen makes no texture. The edge stays where the
/// flank crossed its middle.
/// Tints and soft blends keep their values: their ink volume does not change. Own way, no source. The same for any width of the processor.
/// </remarks>
/// <param name="contrastPercent">Least difference of an edge, percent of full laydown: over 0 to 100.</param>
/// <param name="reachPixels">How far to each side it looks, 1 to 64: a picture enlarged n times has flanks of about 2 n.</param>
public sealed class SharpEdges(double contrastPercent, int reachPixels = 3) : ITileStage
{
    // Within a tenth of full or bare a solid shape is meant: own choice.
    private const ushort NearlyBare = 6553, NearlyFull = Tile.Full - NearlyBare;

    private readonly ushort contrast = (ushort)Math.Ceiling(Bounds.Within(contrastPercent, 0.01, 100) / 100 * Tile.Full);

    /// <inheritdoc/>
    public int ReachPixels { get; } = Bounds.Within(reachPixels, 1, 64);

    /// <inheritdoc/>
    public int TargetInks(int sourceInks) => sourceInks;

    /// <inheritdoc/>
    public void Run(Tile source, Tile target)
    {
        ushort[] least = new ushort[source.Columns], most = new ushort[source.Columns];
        for (int ink = 0; ink < target.Inks; ink++)
        {
            for (int row = 0; row < target.Rows; row++)
            {
                // Down, then across: of two, of four, … until the window is full.
                source.Row(ink, row).CopyTo(least);
                source.Row(ink, row).CopyTo(most);
                for (int next = 1; next <= 2 * ReachPixels; next++)
                {
                    Lower(least, source.Row(ink, row + next));
                    Raise(most, source.Row(ink, row + next));
                }

                for (int window = 1; window < (2 * ReachPixels) + 1;)
                {
                    int step = Math.Min(window, (2 * ReachPixels) + 1 - window);
                    Lower(least.AsSpan(0, least.Length - step), least.AsSpan(step));
                    Raise(most.AsSpan(0, most.Length - step), most.AsSpan(step));
                    window += step;
                }

                Choose(source.Row(ink, row + ReachPixels)[ReachPixels..], least, most, target.Row(ink, row));
            }
        }
    }

    // In place from the left: what is read lies to the right of what is written.
    private static void Lower(Span<ushort> values, ReadOnlySpan<ushort> others)
    {
        int at = 0;
        for (; at + Vector<ushort>.Count <= values.Length; at += Vector<ushort>.Count)
            Vector.Min(new Vector<ushort>(values[at..]), new Vector<ushort>(others[at..])).CopyTo(values[at..]);
        for (; at < values.Length; at++)
            values[at] = Math.Min(values[at], others[at]);
    }

    private static void Raise(Span<ushort> values, ReadOnlySpan<ushort> others)
    {
        int at = 0;
        for (; at + Vector<ushort>.Count <= values.Length; at += Vector<ushort>.Count)
            Vector.Max(new Vector<ushort>(values[at..]), new Vector<ushort>(others[at..])).CopyTo(values[at..]);
        for (; at < values.Length; at++)
            values[at] = Math.Max(values[at], others[at]);
    }

    private void Choose(ReadOnlySpan<ushort> values, ReadOnlySpan<ushort> least, ReadOnlySpan<ushort> most, Span<ushort> target)
    {
        int at = 0;
        for (; at + Vector<ushort>.Count <= target.Length; at += Vector<ushort>.Count)
        {
            Vector<ushort> value = new(values[at..]), low = new(least[at..]), high = new(most[at..]);
            Vector<ushort> edge = Vector.GreaterThanOrEqual(high - low, new Vector<ushort>(contrast));
            if (edge == Vector<ushort>.Zero)
            {
                value.CopyTo(target[at..]);
                continue;
            }

            Vector<ushort> full = Vector.BitwiseOr(high, Vector.GreaterThanOrEqual(high, new Vector<ushort>(NearlyFull)));
            Vector<ushort> bare = Vector.AndNot(low, Vector.LessThanOrEqual(low, new Vector<ushort>(NearlyBare)));
            Vector<ushort> side = Vector.ConditionalSelect(Vector.GreaterThanOrEqual(value - low, high - value), full, bare);
            Vector.ConditionalSelect(edge, side, value).CopyTo(target[at..]);
        }

        for (; at < target.Length; at++)
            target[at] = most[at] - least[at] < contrast ? values[at] : Side(values[at], least[at], most[at]);
    }

    private static ushort Side(ushort value, ushort low, ushort high) =>
        value - low >= high - value ? (high >= NearlyFull ? Tile.Full : high) : (low <= NearlyBare ? (ushort)0 : low);
}
