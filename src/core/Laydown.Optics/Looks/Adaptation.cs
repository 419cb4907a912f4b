using Laydown.Measures;

namespace Laydown.Optics.Looks;

/// <summary>What the eye that looks at a lit piece is adapted to.</summary>
public sealed record Adaptation
{
    /// <summary>An adaptation.</summary>
    /// <param name="lampShare">White of the eye: 0 = a perfect diffuser in the room's light, 1 = the lit piece without colour, between them
    /// both lights in these shares.</param>
    /// <param name="degree">How far the eye takes that white for white, 0 not at all (it stays with D50) to 1 wholly; CAT16
    /// [Li2017].</param>
    /// <param name="surround">Only on wish: a dim or dark surround lets a picture look flatter.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or outside its range, or no known surround.</exception>
    public Adaptation(double lampShare, double degree = 1, Surround surround = Surround.Average)
    {
        LampShare = Bounds.Within(lampShare, 0, 1);
        Degree = Bounds.Within(degree, 0, 1);
        Surround = Enum.IsDefined(surround)
            ? surround
            : throw new ArgumentOutOfRangeException(nameof(surround), surround, "Surround: wanted average, dim or dark.");
    }

    /// <summary>Adapted to the room's light: the lit piece may be far over white.</summary>
    public static Adaptation OfRoom { get; } = new(0);

    /// <summary>Adapted to the lit piece.</summary>
    public static Adaptation OfLamp { get; } = new(1);

    /// <summary>Share of the lit piece in the eye's white.</summary>
    public double LampShare { get; }

    /// <summary>Degree of adaptation.</summary>
    public double Degree { get; }

    /// <summary>The surround that was asked for.</summary>
    public Surround Surround { get; }

    /// <summary>Exponent on relative luminance that shows in an average surround how the picture looks in this one.</summary>
    /// <remarks>1 over the system contrast that pictures need there: 1, 1.25 and 1.5 (from memory).</remarks>
    public double Exponent => Surround switch
    {
        Surround.Dim => 1 / 1.25,
        Surround.Dark => 1 / 1.5,
        _ => 1,
    };
}
