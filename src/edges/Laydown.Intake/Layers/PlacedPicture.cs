using Laydown.Intake.Artwork;
using NetVips;

namespace Laydown.Intake.Layers;

/// <summary>A picture in CIELAB as it lies on the piece, not computed yet.</summary>
/// <param name="Lab">The filled part, 3 bands of float.</param>
/// <param name="Frame">All pixels and the filled ones.</param>
/// <param name="IsBlankOutside">Whether what is not filled stays blank instead of being mirrored.</param>
internal sealed record PlacedPicture(Image Lab, PixelFrame Frame, bool IsBlankOutside);
