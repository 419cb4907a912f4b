namespace Laydown.Layout.Patterns;

/// <summary>Least cost of patterns, cut fractional times, that give all copies wanted: a linear programme by the revised simplex method.</summary>
/// <remarks>
/// Rows: pieces (at least the copies wanted), then stocks with few copies (at most those). The inverse of the basis is kept whole: rows are few.
/// Columns may be added at any time; the basis stays right. [Dantzig1963]
/// </remarks>
internal sealed class CoverMaster
{
    private const double Tolerance = 1e-9;
    private const int MostPivots = 20_000;

    private readonly int rows;
    private readonly int pieces;
    private readonly List<(double Cost, int[] Row, double[] Value)> columns = [];
    private readonly double[] inverse;
    private readonly double[] basic;
    private readonly int[] basis;
    private readonly double[] entering;
    private readonly double[] reward;
    private readonly double penalty;

    /// <param name="wanted">Copies wanted, by piece.</param>
    /// <param name="there">Sheets there, by limited stock.</param>
    /// <param name="penalty">Cost of a copy left out; above what any is worth.</param>
    internal CoverMaster(IReadOnlyList<int> wanted, IReadOnlyList<int> there, double penalty)
    {
        pieces = wanted.Count;
        rows = pieces + there.Count;
        this.penalty = penalty;
        inverse = new double[rows * rows];
        basis = new int[rows];
        basic = new double[rows];
        entering = new double[rows];
        reward = new double[rows];
        for (int r = 0; r < rows; r++)
        {
            // A small different excess of each row parts rows that would tie.
            inverse[(r * rows) + r] = 1;
            basic[r] = (r < pieces ? wanted[r] : there[r - pieces]) + (1e-7 * (r + 1));
            basis[r] = -1 - r;
        }
    }

    /// <summary>Worth of one more copy, or of one more sheet (0 or less), by row.</summary>
    internal double[] Prices => reward;

    /// <summary>Adds a pattern; its number.</summary>
    internal int Add(double cost, int[] row, double[] value)
    {
        columns.Add((cost, row, value));
        return columns.Count - 1;
    }

    /// <summary>Goes to the least cost; the cost, with what is left out.</summary>
    internal double Solve()
    {
        for (int pivot = 0; pivot < MostPivots; pivot++)
        {
            SetPrices();
            int column = Entering(pivot > MostPivots / 2);
            if (column == int.MinValue)
                break;
            Direction(column);
            int leaving = Leaving();
            if (leaving < 0)
                throw new InvalidOperationException("A cost without end: a pattern of negative cost.");
            Pivot(column, leaving);
        }

        double cost = 0;
        for (int r = 0; r < rows; r++)
            cost += Cost(basis[r]) * Math.Max(0, basic[r]);
        return cost;
    }

    /// <summary>Times each pattern of the basis is cut: number and times.</summary>
    internal IEnumerable<(int Column, double Times)> Uses()
    {
        for (int r = 0; r < rows; r++)
            if (basis[r] >= 0 && basic[r] > 1e-6)
                yield return (basis[r], basic[r]);
    }

    // −1 − row: what is left out (pieces) or unused (stocks) of a row at the start; −1 − rows − row: too much of a piece.
    private double Cost(int column) => column >= 0 ? columns[column].Cost : column >= -pieces ? penalty : 0;

    private void SetPrices()
    {
        Array.Clear(reward);
        for (int r = 0; r < rows; r++)
        {
            double cost = Cost(basis[r]);
            if (cost == 0)
                continue;
            ReadOnlySpan<double> line = inverse.AsSpan(r * rows, rows);
            for (int c = 0; c < rows; c++)
                reward[c] += cost * line[c];
        }
    }

    private int Entering(bool first)
    {
        (int best, double least) = (int.MinValue, -Tolerance * penalty);
        for (int p = 0; p < pieces; p++)
            if (reward[p] < least)
                (best, least) = (-1 - rows - p, reward[p]);
        for (int s = pieces; s < rows; s++)
            if (-reward[s] < least)
                (best, least) = (-1 - s, -reward[s]);
        for (int c = 0; c < columns.Count; c++)
        {
            (double cost, int[] row, double[] value) = columns[c];
            for (int i = 0; i < row.Length; i++)
                cost -= reward[row[i]] * value[i];
            if (cost < least && !Basic(c))
            {
                (best, least) = (c, cost);
                if (first)
                    break;
            }
        }

        return best;
    }

    private bool Basic(int column) => Array.IndexOf(basis, column) >= 0;

    private void Direction(int column)
    {
        Array.Clear(entering);
        if (column < 0)
        {
            bool excess = column < -rows;
            int row = excess ? -1 - rows - column : -1 - column;
            for (int r = 0; r < rows; r++)
                entering[r] = excess ? -inverse[(r * rows) + row] : inverse[(r * rows) + row];
            return;
        }

        (_, int[] at, double[] value) = columns[column];
        for (int r = 0; r < rows; r++)
        {
            double sum = 0;
            for (int i = 0; i < at.Length; i++)
                sum += inverse[(r * rows) + at[i]] * value[i];
            entering[r] = sum;
        }
    }

    private int Leaving()
    {
        (int leaving, double least) = (-1, double.MaxValue);
        for (int r = 0; r < rows; r++)
            if (entering[r] > 1e-9 && Math.Max(0, basic[r]) / entering[r] is double ratio && (ratio < least - 1e-12 || (ratio <= least && leaving >= 0 && entering[r] > entering[leaving])))
                (leaving, least) = (r, ratio);
        return leaving;
    }

    private void Pivot(int column, int leaving)
    {
        double by = entering[leaving], times = Math.Max(0, basic[leaving]) / by;
        Span<double> line = inverse.AsSpan(leaving * rows, rows);
        for (int c = 0; c < rows; c++)
            line[c] /= by;
        for (int r = 0; r < rows; r++)
        {
            double factor = entering[r];
            if (r == leaving || factor == 0)
                continue;
            basic[r] -= factor * times;
            Span<double> other = inverse.AsSpan(r * rows, rows);
            for (int c = 0; c < rows; c++)
                other[c] -= factor * line[c];
        }

        basic[leaving] = times;
        basis[leaving] = column;
    }
}
