using System.Numerics;

namespace Laydown.Raster.Screens;

/// <summary>Dots on a torus and the height of ground around them, with the highest dot and the lowest bare place at hand.</summary>
internal sealed class DotField
{
    /// <summary>How far a dot raises the ground, px: beyond, a hill with σ 1.5 px is below a millionth.</summary>
    public const int Reach = 8;

    private const int Side = ThresholdArray.Side;

    // Above any ground: tells dots from bare places in one number.
    private const int Dot = 1 << 30;

    private readonly int[] ground = new int[Side * Side];
    private readonly int[] highest = new int[Side];
    private readonly int[] lowest = new int[Side];
    private readonly int[] hill;

    /// <summary>No dots.</summary>
    /// <param name="hill">Heights around a dot, (2 × reach + 1)².</param>
    /// <param name="seed">Chance for the least bits, which settle ties.</param>
    public DotField(int[] hill, int seed)
    {
        this.hill = hill;
        SeededChance chance = new((uint)seed ^ 0x5EED);
        for (int place = 0; place < ground.Length; place++)
            ground[place] = (int)(chance.Next() & 15);
        for (int row = 0; row < Side; row++)
            Survey(row);
    }

    /// <summary>Whether there is a dot.</summary>
    public bool Has(int place) => ground[place] >= Dot;

    /// <summary>All dots, in order of their places.</summary>
    public int[] Places() => Enumerable.Range(0, ground.Length).Where(Has).ToArray();

    /// <summary>Sets (1) or takes away (−1) a dot.</summary>
    public void Change(int place, int sign)
    {
        ground[place] += sign * Dot;
        Raise(place, hill, sign);
    }

    /// <summary>Raises the ground around a place, as a dot of another array does.</summary>
    public void Raise(int place, int[] heights, int sign)
    {
        int row = place / Side, column = place % Side, width = (2 * Reach) + 1;
        for (int y = 0; y < width; y++)
        {
            int line = ((row + y - Reach) & (Side - 1)) * Side;
            for (int x = 0; x < width; x++)
                ground[line + ((column + x - Reach) & (Side - 1))] += sign * heights[(y * width) + x];
            Survey(line / Side);
        }
    }

    /// <summary>The dot on the highest ground.</summary>
    public int Highest()
    {
        int best = highest[0];
        for (int row = 1; row < Side; row++)
            best = ground[highest[row]] > ground[best] ? highest[row] : best;
        return best;
    }

    /// <summary>The bare place on the lowest ground.</summary>
    public int Lowest()
    {
        int best = lowest[0];
        for (int row = 1; row < Side; row++)
            best = ground[lowest[row]] < ground[best] ? lowest[row] : best;
        return best;
    }

    private void Survey(int row)
    {
        ReadOnlySpan<int> line = ground.AsSpan(row * Side, Side);
        Vector<int> most = new(line), least = most;
        for (int column = Vector<int>.Count; column < Side; column += Vector<int>.Count)
        {
            Vector<int> next = new(line[column..]);
            most = Vector.Max(most, next);
            least = Vector.Min(least, next);
        }

        int high = most[0], low = least[0];
        for (int lane = 1; lane < Vector<int>.Count; lane++)
            (high, low) = (Math.Max(high, most[lane]), Math.Min(low, least[lane]));
        highest[row] = (row * Side) + line.IndexOf(high);
        lowest[row] = (row * Side) + line.IndexOf(low);
    }
}
