namespace Laydown.Layout.FreePacking;

/// <summary>A rectangle told by its sides: bare and unable to grow any further, or taken.</summary>
internal readonly record struct Bare(int X, int Y, int Right, int Top)
{
    internal int W => Right - X;

    internal int H => Top - Y;

    internal long Area => (long)W * H;

    internal bool Holds(in Bare other) => other.X >= X && other.Y >= Y && other.Right <= Right && other.Top <= Top;
}
