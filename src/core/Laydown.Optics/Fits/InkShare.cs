namespace Laydown.Optics.Fits;

/// <summary>How much of an ink lies in a layer.</summary>
/// <param name="Ink">Name of the ink, such as <c>Cyan</c>.</param>
/// <param name="Share">Part of one full laydown, 0 to 1: as asked of the press, or as it acts.</param>
public sealed record InkShare(string Ink, double Share);
