namespace Laydown.Raster.Scaling;

/// <summary>The weight of a neighbour by its distance, before weights are brought to a sum of one.</summary>
internal static class KernelShape
{
    private const double LanczosLobes = 3;

    /// <summary>Distance beyond which there is no weight, pixels.</summary>
    public static double Reach(ScaleKernel kernel) => kernel switch
    {
        ScaleKernel.Box => 0.5,
        ScaleKernel.Linear => 1,
        ScaleKernel.CatmullRom => 2,
        _ => LanczosLobes,
    };

    /// <summary>The weight at a distance, pixels.</summary>
    public static double At(ScaleKernel kernel, double distance)
    {
        double d = Math.Abs(distance);
        return kernel switch
        {
            // Half a pixel belongs to the pixel on its left alone.
            ScaleKernel.Box => distance is > -0.5 and <= 0.5 ? 1 : 0,
            ScaleKernel.Linear => Math.Max(0, 1 - d),
            ScaleKernel.CatmullRom => d < 1 ? 1 + (d * d * ((1.5 * d) - 2.5)) : d < 2 ? 2 + (d * (-4 + (d * (2.5 - (0.5 * d))))) : 0,
            _ => d < LanczosLobes ? Sine(d) * Sine(d / LanczosLobes) : 0,
        };
    }

    private static double Sine(double d) => d < 1e-9 ? 1 : Math.Sin(Math.PI * d) / (Math.PI * d);
}
