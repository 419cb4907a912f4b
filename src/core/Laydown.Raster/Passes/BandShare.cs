namespace Laydown.Raster.Passes;

/// <summary>How visible bands would be if they had one cause alone.</summary>
/// <param name="Cause">The cause.</param>
/// <param name="VisibleDeltaL">Peak of what the eye sees of them, L*.</param>
public sealed record BandShare(BandCause Cause, double VisibleDeltaL);
