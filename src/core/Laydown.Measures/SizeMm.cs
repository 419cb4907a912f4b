namespace Laydown.Measures;

/// <summary>Width and height of a flat thing in millimetres.</summary>
/// <remarks>Each side 0 mm to 1 000 000 mm, never NaN. <c>default</c> is a point.</remarks>
public readonly record struct SizeMm
{
    /// <summary>A size of the given sides.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A side is NaN, negative or over 1 km.</exception>
    [System.Text.Json.Serialization.JsonConstructor]
    public SizeMm(double widthMm, double heightMm)
    {
        WidthMm = Bounds.Within(widthMm, 0, 1_000_000);
        HeightMm = Bounds.Within(heightMm, 0, 1_000_000);
    }

    /// <summary>Width, mm.</summary>
    public double WidthMm { get; }

    /// <summary>Height, mm.</summary>
    public double HeightMm { get; }

    /// <summary>Area in square metres.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public double AreaM2 => WidthMm * HeightMm / 1e6;

    /// <summary>The same size lying on its side.</summary>
    public SizeMm Turned() => new(HeightMm, WidthMm);

    /// <summary>Whether this size fits within <paramref name="other"/> without turning, both edges allowed, to 1 nm.</summary>
    public bool FitsIn(SizeMm other) => WidthMm <= other.WidthMm + 1e-6 && HeightMm <= other.HeightMm + 1e-6;

    /// <summary>Such as <c>1220 × 2440 mm</c>.</summary>
    public override string ToString() => Invariant($"{WidthMm:0.##} × {HeightMm:0.##} mm");
}
