namespace Laydown.Layout.Contours;

/// <summary>An upright rectangle that forms may lie in: the strip, or the box around a board.</summary>
internal readonly record struct Bay(float Left, float Bottom, float Right, float Top)
{
    /// <summary>What single precision may lose: a form as wide as the room must fit.</summary>
    internal const float Rounding = 1.0000003f;

    internal float Area => (Right - Left) * (Top - Bottom);

    internal bool Takes(Turned form) => form.Width <= (Right - Left) * Rounding && form.Height <= (Top - Bottom) * Rounding;

    /// <summary>The nearest x at which the form is inside.</summary>
    internal float ClampX(Turned form, float x) => Math.Max(Math.Min(x, Right - form.MaxX), Left - form.MinX);

    /// <summary>The nearest y at which the form is inside.</summary>
    internal float ClampY(Turned form, float y) => Math.Max(Math.Min(y, Top - form.MaxY), Bottom - form.MinY);
}
