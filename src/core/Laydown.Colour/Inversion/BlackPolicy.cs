using Laydown.Colour.Spaces;

namespace Laydown.Colour.Inversion;

/// <summary>How much black is wanted in a colour: none in the lights, rising smoothly in the darks, less in strong colours.</summary>
/// <param name="StartLightness">L* under which black starts, over 0 to 100.</param>
/// <param name="WidthLightness">Over how much L* below the start black rises to its most, over 0 to 100.</param>
/// <param name="Most">Black wanted at the end of that rise on the neutral axis, 0 to 1.</param>
/// <param name="HalfChroma">Chroma at which half as much black is wanted as on the neutral axis, over 0.</param>
/// <remarks>A wish, not a law: where the colour cannot be met with it, the colour wins. Common practice, no source.</remarks>
public sealed record BlackPolicy(double StartLightness, double WidthLightness, double Most, double HalfChroma)
{
    /// <summary>Black late and only where darkness asks for it: smooth skin and skies, most colour ink.</summary>
    public static BlackPolicy Least { get; } = new(35, 35, 1, 25);

    /// <summary>Black from L* 55 downward, all of it in the darkest neutrals.</summary>
    public static BlackPolicy Medium { get; } = new(55, 55, 1, 45);

    /// <summary>Black early: steadiest greys, least ink, more grain in the middle tones.</summary>
    public static BlackPolicy Greatest { get; } = new(85, 75, 1, 60);

    /// <summary>What is taken where nothing else is said.</summary>
    public static BlackPolicy Usual => Medium;

    /// <summary>Black wanted for a colour, 0 to <see cref="Most"/>; continuous with its first derivative.</summary>
    public double Wanted(Lab colour)
    {
        double depth = Math.Clamp((StartLightness - colour.L) / WidthLightness, 0, 1);
        double strength = colour.Chroma / HalfChroma;
        return Most * depth * Math.Sqrt(depth) / (1 + (strength * strength));
    }
}
