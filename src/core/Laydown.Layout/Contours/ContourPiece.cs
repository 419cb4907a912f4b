using Laydown.Geometry.Shapes;

namespace Laydown.Layout.Contours;

/// <summary>A shape to be laid out by its contour, and how often it is wanted.</summary>
/// <param name="Id">Unique in one problem.</param>
/// <param name="Area">The finished shape, mm, anywhere in the plane; its holes may take other pieces. Several parts move as one.</param>
/// <param name="Copies">How many; at least 1.</param>
/// <param name="Angles">The angles it may be turned to.</param>
/// <param name="Direction">Pieces that name the same direction all lie at one common angle (prints that must look alike beside each other); null for none.</param>
public sealed record ContourPiece(string Id, Shape Area, int Copies, ContourAngles Angles, string? Direction = null);
