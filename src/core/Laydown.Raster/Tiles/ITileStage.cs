namespace Laydown.Raster.Tiles;

/// <summary>One step of the way from plates to laydown. Keeps nothing between tiles and looks only at near pixels.</summary>
public interface ITileStage
{
    /// <summary>How far to each side a pixel's result depends on other pixels; 0 where it depends on itself alone.</summary>
    int ReachPixels { get; }

    /// <summary>How many inks come out when <paramref name="sourceInks"/> go in.</summary>
    /// <exception cref="ArgumentException">The stage cannot take that many inks.</exception>
    int TargetInks(int sourceInks);

    /// <summary>Fills every value of <paramref name="target"/>.</summary>
    /// <param name="source">Larger than the target by <see cref="ReachPixels"/> on each of the four sides.</param>
    /// <param name="target">The result; what it held before does not matter.</param>
    void Run(Tile source, Tile target);
}
