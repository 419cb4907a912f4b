using Laydown.Colour.Spaces;

namespace Laydown.Colour.Inversion;

/// <summary>How much black is wanted in a colour: none in the lights, rising smoothly in the darks, less in strong colours.</summary>
/// <param name="StartLightness">L* under which black starts, over 0 to 100.</param>
/// <param name="Most">Black wanted at L* = 0 on the neutral axis, 0 to 1.</param>
/// <param name="HalfChroma">Chroma at which half as much black is wanted as on the neutral axis, over 0.</param>
/// <remarks>A wish, not a law: where the colour cannot be met with it, the colour wins. Common practice, no source.</remarks>
public sealed record BlackPolicy(double StartLightness, double Most, double HalfChroma)
{
    /// <summary>Black from L* 55 downward, all of it in the darkest neutrals.</summary>
    public static BlackPolicy Usual { get; } = new(55, 1, 45);

    /// <summary>Black wanted for a colour, 0 to <see cref="Most"/>; continuous with its first derivative.</summary>
    public double Wanted(Lab colour)
    {
        double depth = Math.Clamp((StartLightness - colour.L) / StartLightness, 0, 1);
        double strength = colour.Chroma / HalfChroma;
        return Most * depth * Math.Sqrt(depth) / (1 + (strength * strength));
    }
}
