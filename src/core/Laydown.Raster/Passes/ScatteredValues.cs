namespace Laydown.Raster.Passes;

/// <summary>Values that look like chance and depend on place and seed alone, so that every tiling and run gives the same.</summary>
/// <remarks>A 64-bit product mix; uncorrelated with any threshold array because it never repeats. Its evenness is held by a test.</remarks>
internal static class ScatteredValues
{
    /// <summary>A value of 32 bits, all equally likely.</summary>
    public static uint At(int row, int column, int seed)
    {
        ulong x = ((ulong)(uint)row << 32) | (uint)column;
        x += 0x9E3779B97F4A7C15UL * ((ulong)(uint)seed + 1);
        x = (x ^ (x >> 30)) * 0xBF58476D1CE4E5B9UL;
        x = (x ^ (x >> 27)) * 0x94D049BB133111EBUL;
        return (uint)((x ^ (x >> 31)) >> 16);
    }

    /// <summary>A value spread as a bell of mean 0 and deviation 1.</summary>
    public static double Bell(int place, int seed)
    {
        // Two even values make one of the bell (Box and Muller); the first is kept off zero.
        double u = (At(place, 0, seed) + 0.5) / 4294967296.0, v = At(place, 1, seed) / 4294967296.0;
        return Math.Sqrt(-2 * Math.Log(u)) * Math.Cos(2 * Math.PI * v);
    }
}
