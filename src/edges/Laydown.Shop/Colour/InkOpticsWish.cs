namespace Laydown.Shop.Colour;

/// <summary>Readings of a chart of ink optics, and what they were read of and with.</summary>
/// <param name="Files">Files of readings; at least one.</param>
/// <param name="StockId">The sheet the chart was printed on; null for the thinnest clear one of the print condition.</param>
/// <param name="ApertureMm">Diameter of the instrument's aperture, mm; null where nobody says.</param>
/// <param name="PatchMm">Shorter side of a patch, mm; null where nobody says.</param>
/// <param name="OwnOnly">Whether the optics hold for this print condition alone; else for its ink set.</param>
public sealed record InkOpticsWish(IReadOnlyList<InkOpticsFile> Files, string? StockId = null, double? ApertureMm = null,
    double? PatchMm = null, bool OwnOnly = false);
