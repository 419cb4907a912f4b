using Laydown.Measures;

namespace Laydown.Raster.Passes;

/// <summary>The dots of a single pass or scan, taken out of the dots of the whole.</summary>
/// <remarks>Rows are packed, first dot in the highest bits, 1 or 2 bits a dot, as in the dot files. The pictures of all passes together
/// are the whole, each dot once.</remarks>
public static class PassPicture
{
    /// <summary>Dots of one row that are fired in one pass over it.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="layer">Layer from 0.</param>
    /// <param name="pass">Pass from 0.</param>
    /// <param name="row">Row from 0.</param>
    /// <param name="dots">The row, packed, from <paramref name="firstColumn"/> on.</param>
    /// <param name="bitsPerDot">1 or 2.</param>
    /// <param name="firstColumn">Column of the first dot.</param>
    /// <param name="target">Takes the dots of that pass, all others bare; as long as <paramref name="dots"/>.</param>
    /// <exception cref="ArgumentException">Another number of bits, another length, or no such layer, row or pass.</exception>
    public static void Row(PassPlan plan, int layer, int pass, int row, ReadOnlySpan<byte> dots, int bitsPerDot, int firstColumn, Span<byte> target)
    {
        if (bitsPerDot is not (1 or 2))
            throw new ArgumentOutOfRangeException(nameof(bitsPerDot), bitsPerDot, "Bits a dot: wanted 1 or 2.");
        if (target.Length != dots.Length)
            throw new ArgumentException(Invariant($"Target: found {target.Length} bytes; wanted {dots.Length}."), nameof(target));
        Bounds.Within(row, 0, plan.Rows - 1);
        Bounds.Within(firstColumn, 0, int.MaxValue);
        ReadOnlySpan<int> ends = plan.Ends(Bounds.Within(layer, 0, plan.Layers - 1), row);
        int from = Bounds.Within(pass, 0, plan.Head.Passes - 1) == 0 ? 0 : ends[pass - 1], to = ends[pass];
        int perByte = 8 / bitsPerDot, one = bitsPerDot == 1 ? 1 : 3;
        for (int at = 0; at < dots.Length; at++)
        {
            // A bare byte has nothing to deal out.
            int kept = 0;
            for (int dot = 0; dots[at] != 0 && dot < perByte; dot++)
            {
                int threshold = plan.Threshold(row, firstColumn + (at * perByte) + dot);
                if (threshold >= from && threshold < to)
                    kept |= one << (8 - (bitsPerDot * (dot + 1)));
            }

            target[at] = (byte)(dots[at] & kept);
        }
    }

    /// <summary>Dots of one row that are fired in one scan; bare where that scan does not meet the row.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="layer">Layer from 0.</param>
    /// <param name="scan">Scan from 0.</param>
    /// <param name="row">Row from 0.</param>
    /// <param name="dots">The row, packed.</param>
    /// <param name="bitsPerDot">1 or 2.</param>
    /// <param name="firstColumn">Column of the first dot.</param>
    /// <param name="target">Takes the dots of that scan; as long as <paramref name="dots"/>.</param>
    /// <exception cref="ArgumentException">As for <see cref="Row"/>.</exception>
    public static void RowOfScan(PassPlan plan, int layer, int scan, int row, ReadOnlySpan<byte> dots, int bitsPerDot, int firstColumn, Span<byte> target)
    {
        for (int pass = 0; pass < plan.Head.Passes; pass++)
        {
            if (plan.Meeting(layer, row, pass).Scan != scan)
                continue;
            Row(plan, layer, pass, row, dots, bitsPerDot, firstColumn, target);
            return;
        }

        target.Clear();
    }
}
