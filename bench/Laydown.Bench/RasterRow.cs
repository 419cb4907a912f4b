namespace Laydown.Bench;

/// <summary>One stage of the raster engine beside a general library doing the same in the same call.</summary>
/// <param name="Stage">Which stage, in plain words.</param>
/// <param name="Variant">Picture, size, width of the lanes.</param>
/// <param name="MpxPerS">Ours, million pixels (of one ink where it is about an ink) a second of processor time, best of several.</param>
/// <param name="Beside">The library and its call, or null where none does it.</param>
/// <param name="BesideMpxPerS">The library's, the same unit; null where none.</param>
/// <param name="Error">Largest error against exact arithmetic in codes of 255, or null where the result is exact by test.</param>
/// <param name="Wanted">What is aimed at, in words.</param>
/// <param name="Checksum">Hash of the result.</param>
internal sealed record RasterRow(
    string Stage, string Variant, double MpxPerS, string? Beside, double? BesideMpxPerS, double? Error, string? Wanted, string Checksum)
{
    /// <summary>How many times as fast as the library; null where none ran.</summary>
    public double? Ratio => BesideMpxPerS is > 0 ? MpxPerS / BesideMpxPerS : null;
}
