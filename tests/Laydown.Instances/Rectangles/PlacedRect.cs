namespace Laydown.Instances.Rectangles;

/// <summary>One rectangle put down.</summary>
/// <param name="Item">Index of its item.</param>
/// <param name="X">Left side.</param>
/// <param name="Y">Lower side.</param>
/// <param name="Width">Width as it lies.</param>
/// <param name="Height">Height as it lies.</param>
public sealed record PlacedRect(int Item, int X, int Y, int Width, int Height);
