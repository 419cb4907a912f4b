namespace Laydown.Formats.Pdf;

/// <summary>The colour set for stroking or filling.</summary>
/// <param name="Space">Its space.</param>
/// <param name="Pattern">Name of the pattern in the resources, or null for a plain colour.</param>
internal readonly record struct PaintColour(ColourSpace Space, string? Pattern);
