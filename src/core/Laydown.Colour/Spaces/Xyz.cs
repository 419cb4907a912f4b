namespace Laydown.Colour.Spaces;

/// <summary>CIE tristimulus values; Y = 100 for the perfect diffuser unless the owner says otherwise.</summary>
/// <param name="X">X.</param>
/// <param name="Y">Y, the luminance factor in percent.</param>
/// <param name="Z">Z.</param>
/// <remarks><c>default</c> is black.</remarks>
public readonly record struct Xyz(double X, double Y, double Z)
{
    /// <summary>Both lights on one spot.</summary>
    public Xyz Plus(Xyz other) => new(X + other.X, Y + other.Y, Z + other.Z);

    /// <summary>The same light, <paramref name="factor"/> times as strong.</summary>
    public Xyz Times(double factor) => new(X * factor, Y * factor, Z * factor);
}
