namespace Laydown.Optics.Panels;

/// <summary>Where a plan misses what, pixel by pixel of the small pair.</summary>
/// <param name="Width">Pixels across.</param>
/// <param name="Height">Pixels down.</param>
/// <param name="Day">ΔE00 by day.</param>
/// <param name="Night">ΔE00 when lit.</param>
/// <param name="Ghost">What of the night picture is left by day, weighted ΔE00.</param>
/// <param name="Reason">Why a pixel is out of reach.</param>
public sealed record PanelMaps(int Width, int Height, float[] Day, float[] Night, float[] Ghost, UnreachableReason[] Reason);
