namespace Laydown.Raster.Passes;

/// <summary>A small picture for the screen.</summary>
/// <param name="Rows">Pixels down, along the feed.</param>
/// <param name="Columns">Pixels across.</param>
/// <param name="Rgb">sRGB, 3 bytes a pixel, row after row [IEC61966-2-1].</param>
public sealed record BandImage(int Rows, int Columns, byte[] Rgb);
