namespace Laydown.Layout.Patterns;

/// <summary>Whole steps along one side of a sheet: as fine as the sizes ask for, or else so coarse that tables stay small.</summary>
/// <remarks>Coarse steps round pieces up, so that what fits in steps fits in truth. 5040 steps part a side evenly by every number up to 10,
/// so that equal pieces side by side lose nothing.</remarks>
internal readonly record struct CutGrid
{
    private const int MostFine = 8192;
    private const int Coarse = 5040;

    private readonly int side;
    private readonly int unit;

    internal CutGrid(int side, IEnumerable<int> sizes)
    {
        this.side = side;
        int common = sizes.Aggregate(0, Common);
        unit = common > 0 && side / common <= MostFine ? common : 0;
        Steps = unit > 0 ? side / unit : Coarse;
    }

    /// <summary>Steps of the whole side.</summary>
    internal int Steps { get; }

    /// <summary>Fewest steps that hold a size.</summary>
    internal int Up(int size) => unit > 0 ? (size + unit - 1) / unit : (int)((((long)size * Steps) + side - 1) / side);

    /// <summary>Most steps that a size holds.</summary>
    internal int Down(int size) => unit > 0 ? size / unit : (int)((long)size * Steps / side);

    /// <summary>The greatest common divisor.</summary>
    internal static int Common(int a, int b) => b == 0 ? a : Common(b, a % b);
}
