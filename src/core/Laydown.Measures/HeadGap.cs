namespace Laydown.Measures;

/// <summary>Free height between the highest point of the sheet and the print heads.</summary>
/// <remarks>0 mm to 30 mm, both ends allowed, never NaN. <c>default</c> is 0 mm: a head that touches; refused at set-up.</remarks>
public readonly record struct HeadGap
{
    [System.Text.Json.Serialization.JsonConstructor]
    private HeadGap(double mm) => Mm = mm is >= 0 and <= 30 ? mm : throw new ArgumentOutOfRangeException(nameof(mm), mm, "Head gap: wanted 0 mm to 30 mm.");

    /// <summary>The gap in millimetres.</summary>
    public double Mm { get; }

    /// <summary>A gap of <paramref name="mm"/> millimetres.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="mm"/> is NaN or outside 0 mm to 30 mm.</exception>
    public static HeadGap FromMm(double mm) => new(mm);
}
