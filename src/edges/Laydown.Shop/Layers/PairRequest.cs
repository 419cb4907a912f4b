using Laydown.Measures;

namespace Laydown.Shop.Layers;

/// <summary>Two pictures to read.</summary>
/// <param name="DayPath">Full path of the day picture's file.</param>
/// <param name="NightPath">Full path of the night picture's file; may be the same.</param>
/// <param name="Wish">Pages, frames, placing and points.</param>
/// <param name="Printed">Printed size, bleed included, mm.</param>
/// <param name="BleedMm">Bleed on each side within it, mm; bleed that a picture lacks is mirrored from its edges.</param>
/// <param name="Ppi">Resolution, ppi.</param>
/// <param name="CmykProfilePath">ICC profile that CMYK without a profile is taken for: that of the print condition.</param>
public sealed record PairRequest(
    string DayPath, string NightPath, PairWish Wish, SizeMm Printed, double BleedMm, double Ppi, string CmykProfilePath);
