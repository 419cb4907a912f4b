using Laydown.Measures;

namespace Laydown.Raster.Screens;

/// <summary>The drops a nozzle can throw and the codes that stand for them: 0 = bare, 1 = smallest drop, and so on.</summary>
public sealed class DropLevels
{
    private const int MostDrops = 3;
    private readonly double[] shares;

    /// <summary>Drops of one to three volumes.</summary>
    /// <param name="dropsPl">Volumes, pl, over 0, smallest first; the largest is full laydown.</param>
    /// <exception cref="ArgumentException">No drop, more than three, or volumes that do not rise from over 0.</exception>
    public DropLevels(IReadOnlyList<double> dropsPl)
    {
        Bounds.Within(dropsPl.Count, 1, MostDrops);
        shares = [0, .. dropsPl.Select(d => d / dropsPl[^1])];
        for (int level = 1; level < shares.Length; level++)
        {
            if (!(shares[level] > shares[level - 1]) || !double.IsFinite(dropsPl[level - 1]))
                throw new ArgumentException(Invariant($"Drops {string.Join(", ", dropsPl)} pl: wanted volumes over 0, smallest first."), nameof(dropsPl));
        }
    }

    /// <summary>One drop and bare: 1 bit.</summary>
    public static DropLevels One { get; } = new([1]);

    /// <summary>Bits of a dot in a file: 1 for one drop, 2 for two or three.</summary>
    public int BitsPerDot => shares.Length == 2 ? 1 : 2;

    /// <summary>How many codes there are, bare among them: 2 to 4.</summary>
    public int Levels => shares.Length;

    /// <summary>Volume of a drop as a share of full laydown: 0 for code 0, 1 for the last.</summary>
    /// <param name="level">Code of the dot, 0 to <see cref="Levels"/> − 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such code.</exception>
    public double ShareOf(int level) => shares[Bounds.Within(level, 0, shares.Length - 1)];
}
