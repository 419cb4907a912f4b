using System.Numerics;

namespace Laydown.Layout.Patterns;

/// <summary>The best fillings of strips of every length and every breadth at once: bounded knapsacks, breadth by breadth.</summary>
/// <remarks>
/// A strip of a breadth takes the pieces no broader than it, so the table for a breadth grows from the one before. [GilmoreGomory1965]
/// Rows of values are kept, so that a filling is told by looking back where the value changed. Not for several threads.
/// </remarks>
internal sealed class StripTable
{
    private readonly Lie[] lies;
    private readonly int[] size;
    private readonly int[] level;
    private readonly int length;
    private readonly int[] rowOfLevel;
    private readonly List<int> lieOfRow = [0];
    private readonly List<int> copiesOfRow = [0];
    private float[] values;
    private int rows = 1;

    /// <param name="lies">Ways to lie, any order.</param>
    /// <param name="size">Size of a way along the strip.</param>
    /// <param name="breadth">Its breadth across the strip.</param>
    /// <param name="length">Greatest length of a strip.</param>
    internal StripTable(IEnumerable<Lie> lies, Func<Lie, int> size, Func<Lie, int> breadth, int length)
    {
        this.lies = [.. lies.OrderBy(breadth).ThenBy(l => l.Piece).ThenBy(l => l.Turned)];
        this.size = [.. this.lies.Select(size)];
        this.length = length;
        Breadths = [.. this.lies.Select(breadth).Distinct()];
        level = [.. this.lies.Select(l => Array.IndexOf(Breadths, breadth(l)))];
        rowOfLevel = new int[Breadths.Length];
        values = new float[(length + 1) * (4 + (2 * this.lies.Length))];
    }

    /// <summary>Breadths that occur, growing.</summary>
    internal int[] Breadths { get; }

    /// <summary>Fills the table.</summary>
    /// <param name="worth">Worth of a copy, by piece; 0 or less leaves it out.</param>
    /// <param name="most">Most copies in one strip, by piece.</param>
    internal void Fill(float[] worth, int[] most)
    {
        rows = 1;
        lieOfRow.RemoveRange(1, lieOfRow.Count - 1);
        copiesOfRow.RemoveRange(1, copiesOfRow.Count - 1);
        int at = 0;
        for (int l = 0; l < Breadths.Length; l++)
        {
            for (; at < lies.Length && level[at] == l; at++)
                if (worth[lies[at].Piece] > 0 && most[lies[at].Piece] > 0 && size[at] <= length)
                    Take(at, worth[lies[at].Piece], most[lies[at].Piece]);
            rowOfLevel[l] = rows - 1;
        }
    }

    /// <summary>Whether a breadth takes a piece that the one before it does not.</summary>
    internal bool Adds(int l) => rowOfLevel[l] != (l == 0 ? 0 : rowOfLevel[l - 1]);

    /// <summary>Best worth of a strip.</summary>
    internal float Worth(int l, int stripLength) => values[(rowOfLevel[l] * (length + 1)) + stripLength];

    /// <summary>The filling of that worth.</summary>
    internal void Trace(int l, int stripLength, List<Lie> into)
    {
        int row = rowOfLevel[l], x = stripLength;
        while (row > 0)
        {
            int here = (row * (length + 1)) + x, one = lieOfRow[row], copies = copiesOfRow[row];
            if (values[here] == values[here - length - 1])
            {
                row--;
                continue;
            }

            for (int i = 0; i < Math.Max(1, copies); i++)
                into.Add(lies[one]);
            x -= size[one] * Math.Max(1, copies);
            if (copies > 0)
                row--;
        }
    }

    // No bound where the length is the bound; else portions of 1, 2, 4 … copies make up every count up to the bound.
    private void Take(int lie, float worth, int most)
    {
        int fitting = length / size[lie];
        if (most >= fitting)
        {
            Row(lie, 0, worth);
            return;
        }

        for (int portion = 1; most > 0; portion *= 2)
        {
            int copies = Math.Min(portion, most);
            Row(lie, copies, worth);
            most -= copies;
        }
    }

    private void Row(int lie, int copies, float worth)
    {
        int width = length + 1;
        if ((rows + 1) * width > values.Length)
            Array.Resize(ref values, Math.Max(values.Length * 2, (rows + 1) * width));
        Span<float> before = values.AsSpan((rows - 1) * width, width), after = values.AsSpan(rows * width, width);
        int step = size[lie] * Math.Max(1, copies);
        Grow(before, after, copies == 0 ? after : before, Math.Min(step, width), worth * Math.Max(1, copies));
        lieOfRow.Add(lie);
        copiesOfRow.Add(copies);
        rows++;
    }

    /// <summary>after[x] = the greater of before[x] and from[x − step] + worth.</summary>
    internal static void Grow(ReadOnlySpan<float> before, Span<float> after, ReadOnlySpan<float> from, int step, float worth)
    {
        before[..step].CopyTo(after);
        int x = step, lanes = Vector<float>.Count;
        if (step >= lanes)
        {
            Vector<float> more = new(worth);
            for (; x + lanes <= after.Length; x += lanes)
                Vector.Max(new Vector<float>(before[x..]), new Vector<float>(from[(x - step)..]) + more).CopyTo(after[x..]);
        }

        for (; x < after.Length; x++)
            after[x] = MathF.Max(before[x], from[x - step] + worth);
    }
}
