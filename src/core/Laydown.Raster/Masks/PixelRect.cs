namespace Laydown.Raster.Masks;

/// <summary>A rectangle of whole pixels of a picture; may reach over its edges.</summary>
/// <remarks><c>default</c> holds no pixel.</remarks>
/// <param name="Left">First column.</param>
/// <param name="Top">First row.</param>
/// <param name="Width">Columns; 0 or less holds no pixel.</param>
/// <param name="Height">Rows; 0 or less holds no pixel.</param>
public readonly record struct PixelRect(int Left, int Top, int Width, int Height);
