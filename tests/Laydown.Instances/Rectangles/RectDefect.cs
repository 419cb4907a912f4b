namespace Laydown.Instances.Rectangles;

/// <summary>A damaged place of a board.</summary>
/// <param name="Bin">Which board of the file.</param>
/// <param name="X">Left side.</param>
/// <param name="Y">Lower side.</param>
/// <param name="Width">Width.</param>
/// <param name="Height">Height.</param>
public sealed record RectDefect(int Bin, int X, int Y, int Width, int Height);
