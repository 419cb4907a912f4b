namespace Laydown.Raster.Scaling;

/// <summary>What new pixels are weighed from when a picture is brought to another size. Reducing widens each so that nothing falls between.</summary>
public enum ScaleKernel
{
    /// <summary>Enlarging: the nearest pixel. Reducing: the mean of the area.</summary>
    Box,

    /// <summary>Two neighbours, straight between them.</summary>
    Linear,

    /// <summary>Four neighbours, through their values and with their slopes. [Keys1981]</summary>
    CatmullRom,

    /// <summary>Six neighbours, a sine over its way under a window of the same kind; sharper, with rings.</summary>
    Lanczos3,
}
