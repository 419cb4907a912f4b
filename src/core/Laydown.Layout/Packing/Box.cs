namespace Laydown.Layout.Packing;

/// <summary>An upright rectangle in whole micrometres.</summary>
internal readonly record struct Box(int X, int Y, int W, int H)
{
    internal int Right => X + W;

    internal int Top => Y + H;

    internal long Area => (long)W * H;

    internal bool Overlaps(Box other) => X < other.Right && other.X < Right && Y < other.Top && other.Y < Top;

    internal bool Holds(Box inner) => inner.X >= X && inner.Y >= Y && inner.Right <= Right && inner.Top <= Top;
}
