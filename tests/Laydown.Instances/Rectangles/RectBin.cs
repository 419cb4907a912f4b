namespace Laydown.Instances.Rectangles;

/// <summary>One kind of board of a published instance.</summary>
/// <param name="Width">Width in the instance's unit.</param>
/// <param name="Height">Height; for strips the best known length.</param>
/// <param name="Copies">How many there are; null for as many as wanted.</param>
/// <param name="Cost">What one costs; its area where the file tells none.</param>
public sealed record RectBin(int Width, int Height, int? Copies, double Cost)
{
    /// <summary>Width × height.</summary>
    public long Area => (long)Width * Height;
}
