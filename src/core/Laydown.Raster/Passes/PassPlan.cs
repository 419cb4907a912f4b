using Laydown.Measures;

namespace Laydown.Raster.Passes;

/// <summary>Which nozzle fires which dot of a sheet in which scan.</summary>
/// <remarks>
/// Scan n puts nozzle j of block b on row n·F + (b·J + j)·S − (k·J − 1)·S, so that the first scan has its foremost nozzle on row 0. A row
/// r of a block is met by
/// the nozzles j0, j0 + F, …, with j0 = t / S modulo F and t the row counted from that of nozzle 0 in scan 0: exactly P of them, S scans
/// apart.
/// The block foremost along the feed lays down first: layer 0 is printed by the last block, so every layer lies whole under the next.
/// A dot belongs to the smallest pass whose cumulative weight exceeds T'(row, column); weights of the P nozzles of a row add up to 1.
/// Own derivation; a walk by brute force in the tests finds the same.
/// </remarks>
public sealed class PassPlan
{
    // One pass's share of the thresholds; a row has P of them.
    internal const int Share = 65536;

    private readonly int inverse;
    private readonly int[] cumulative;

    /// <summary>The plan of one face of a sheet.</summary>
    /// <param name="head">The head and its walk.</param>
    /// <param name="rows">Rows of the sheet along the feed, at least 1.</param>
    /// <exception cref="ArgumentException">The walk misses rows, or a number is out of its range.</exception>
    public PassPlan(HeadFigures head, int rows)
    {
        Head = head.Sound();
        Rows = Bounds.Within(rows, 1, 100_000_000);
        inverse = InverseOf(head.RowsBetweenNozzles % head.FeedRows, head.FeedRows);
        cumulative = Cumulated(head);
        ScanCount = checked((int)((((long)rows - 1 - Start) / head.FeedRows) + 1));
    }

    /// <summary>The head and its walk.</summary>
    public HeadFigures Head { get; }

    /// <summary>Rows of the sheet.</summary>
    public int Rows { get; }

    /// <summary>Layers printed in one go.</summary>
    public int Layers => Head.Blocks;

    /// <summary>Scans from the first that reaches the sheet to the last.</summary>
    public int ScanCount { get; }

    // Row of nozzle 0 in scan 0.
    private long Start => -((((long)Head.Blocks * Head.Nozzles) - 1) * Head.RowsBetweenNozzles);

    /// <summary>Scan and nozzle that meet a row in a pass.</summary>
    /// <param name="layer">Layer from 0, in the order they are laid down.</param>
    /// <param name="row">Row from 0.</param>
    /// <param name="pass">Pass over that row from 0, in time.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such layer, row or pass.</exception>
    public PassMeeting Meeting(int layer, int row, int pass) =>
        MeetingAnywhere(Bounds.Within(layer, 0, Layers - 1), Bounds.Within(row, 0, Rows - 1), Bounds.Within(pass, 0, Head.Passes - 1));

    /// <summary>The pass that owns a dot.</summary>
    /// <param name="layer">Layer from 0.</param>
    /// <param name="row">Row from 0.</param>
    /// <param name="column">Column from 0.</param>
    /// <returns>Pass over that row from 0, in time.</returns>
    public int PassOf(int layer, int row, int column) => Owner(
        Ends(Bounds.Within(layer, 0, Layers - 1), Bounds.Within(row, 0, Rows - 1)), Threshold(row, Bounds.Within(column, 0, int.MaxValue)));

    /// <summary>Share of the dots of a row that a pass owns, 0 to 1; over the passes of a row they add up to 1.</summary>
    public double WeightOf(int layer, int row, int pass)
    {
        ReadOnlySpan<int> ends = Ends(Bounds.Within(layer, 0, Layers - 1), row);
        int at = Bounds.Within(pass, 0, Head.Passes - 1);
        return (ends[at] - (at == 0 ? 0 : ends[at - 1])) / ((double)Share * Head.Passes);
    }

    /// <summary>One scan: direction, place of the belt, rows under the head.</summary>
    /// <param name="number">Scan from 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such scan.</exception>
    public PassScan Scan(int number)
    {
        int s = Head.RowsBetweenNozzles, all = Head.Blocks * Head.Nozzles;
        long first = Start + (Bounds.Within(number, 0, ScanCount - 1) * (long)Head.FeedRows);
        int from = (int)Math.Max(0, (-first + s - 1) / s), to = (int)Math.Min(all - 1, (Rows - 1 - first) / s);
        return new(number, GoesForth(number), number * Head.FeedRows * Head.RowMm, (int)(first + ((long)from * s)), (int)(first + ((long)to * s)), from, to);
    }

    /// <summary>All scans in time.</summary>
    public IEnumerable<PassScan> Scans() => Enumerable.Range(0, ScanCount).Select(Scan);

    /// <summary>Closest columns that one nozzle fires in one pass when every dot is asked for.</summary>
    /// <remarks>Looked at over one step of the feed and 1024 columns: by columns in turn it is P, less where edges are feathered, 1 where
    /// dots are scattered; masks under limits of firing: [Boley2010].</remarks>
    public int ClosestColumns()
    {
        int closest = int.MaxValue;
        Span<int> last = stackalloc int[Head.Passes];
        for (int row = 0; row < Math.Min(Rows, Head.FeedRows); row++)
        {
            last.Fill(int.MinValue / 2);
            ReadOnlySpan<int> ends = Ends(0, row);
            for (int column = 0; column < 1024; column++)
            {
                int pass = Owner(ends, Threshold(row, column));
                closest = Math.Min(closest, column - last[pass]);
                last[pass] = column;
            }
        }

        return Math.Min(closest, 1024);
    }

    /// <summary>Firing rate one nozzle needs for this deal of dots, kHz.</summary>
    /// <param name="speedMPerS">Carriage speed, m/s, over 0.</param>
    public double FiringKhz(double speedMPerS) => Bounds.Within(speedMPerS, 0.001, 100) / (ClosestColumns() * Head.ColumnMm);

    /// <summary>As <see cref="Meeting"/>, for rows beyond the sheet too; their scans may lie before the first.</summary>
    internal PassMeeting MeetingAnywhere(int layer, int row, int pass)
    {
        int block = Head.Blocks - 1 - layer, s = Head.RowsBetweenNozzles, f = Head.FeedRows;
        long t = row - Start - ((long)block * Head.Nozzles * s);
        int nozzle = FirstNozzle(t) + ((Head.Passes - 1 - pass) * f);
        return new((int)((t - ((long)nozzle * s)) / f), (block * Head.Nozzles) + nozzle);
    }

    /// <summary>Whether a scan goes from the origin.</summary>
    internal bool GoesForth(int scan) => !Head.TwoWay || (scan & 1) == 0;

    /// <summary>Cumulative weights of the passes over a row, in shares of 1/(P · 65536); rows beyond the sheet are taken too.</summary>
    internal ReadOnlySpan<int> Ends(int layer, int row)
    {
        long t = row - Start - ((long)(Head.Blocks - 1 - layer) * Head.Nozzles * Head.RowsBetweenNozzles);
        return cumulative.AsSpan(FirstNozzle(t) * Head.Passes, Head.Passes);
    }

    /// <summary>T' of a dot, 0 to P · 65536 − 1.</summary>
    internal int Threshold(int row, int column)
    {
        uint scattered = ScatteredValues.At(row, column, Head.Seed);
        return Head.Mask == PassMask.Columns
            ? ((int)(((long)column + row) % Head.Passes) * Share) + (int)(scattered >> 16)
            : (int)(((ulong)scattered * (ulong)Head.Passes) >> 16);
    }

    /// <summary>Smallest pass whose cumulative weight exceeds the threshold.</summary>
    internal static int Owner(ReadOnlySpan<int> ends, int threshold)
    {
        int pass = 0;
        while (ends[pass] <= threshold)
            pass++;
        return pass;
    }

    // Nozzle of the block nearest to its end that meets the row: t = n·F + j·S has j ≡ t / S modulo F.
    private int FirstNozzle(long t) => (int)((((t % Head.FeedRows) + Head.FeedRows) % Head.FeedRows * inverse) % Head.FeedRows);

    private static int InverseOf(int value, int modulus)
    {
        // Euclid, keeping the factor of the value.
        (long a, long b, long x, long y) = (modulus, value, 0, 1);
        while (b > 0)
            (a, b, x, y) = (b, a % b, y, x - (a / b * y));
        return (int)(((x % modulus) + modulus) % modulus);
    }

    private static int[] Cumulated(HeadFigures head)
    {
        int p = head.Passes, f = head.FeedRows, whole = p * Share;
        int[] ends = new int[f * p];
        for (int first = 0; first < f; first++)
        {
            // Passes in time go from the foremost nozzle of the row to the last; the last end is exact whatever was rounded before.
            double[] fades = [.. Enumerable.Range(0, p).Select(pass => Fade(head, first + ((p - 1 - pass) * f)))];
            double all = fades.Sum(), sum = 0;
            for (int pass = 0; pass < p; pass++)
            {
                sum += fades[pass];
                ends[(first * p) + pass] = pass == p - 1 ? whole : (int)Math.Round(sum / all * whole);
            }
        }

        return ends;
    }

    private static double Fade(HeadFigures head, int nozzle) => head.FeatherNozzles == 0
        ? 1
        : Math.Min(1, Math.Min(nozzle + 0.5, head.Nozzles - nozzle - 0.5) / head.FeatherNozzles);
}
