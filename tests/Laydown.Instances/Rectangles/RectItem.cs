namespace Laydown.Instances.Rectangles;

/// <summary>A wanted rectangle of a published instance.</summary>
/// <param name="Width">Width.</param>
/// <param name="Height">Height.</param>
/// <param name="Copies">How many are wanted.</param>
/// <param name="Stack">Stack whose order must be kept; −1 for none.</param>
public sealed record RectItem(int Width, int Height, int Copies, int Stack)
{
    /// <summary>Width × height.</summary>
    public long Area => (long)Width * Height;
}
