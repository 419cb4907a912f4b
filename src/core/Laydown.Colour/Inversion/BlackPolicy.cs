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
    /// <summary>Black late and only where darkness asks for it: smooth skin and skies, most colour ink, which gives
    /// way to black again in the darkest tones.</summary>
    public static BlackPolicy Least { get; } = new(35, 35, 1, 25) { Steady = false };

    /// <summary>Black from L* 55 downward, all of it in the darkest neutrals.</summary>
    public static BlackPolicy Medium { get; } = new(55, 55, 1, 45);

    /// <summary>Black early: steadiest greys, least ink, more grain in the middle tones.</summary>
    public static BlackPolicy Greatest { get; } = new(85, 75, 1, 60);

    /// <summary>What is taken where nothing else is said.</summary>
    public static BlackPolicy Usual => Medium;

    /// <summary>The same policy with its rise ending where the print is darkest, so that no other ink has to give way to black at the end.</summary>
    /// <param name="darkestL">L* of the darkest neutral of the print.</param>
    public BlackPolicy EndingAt(double darkestL) => this with { WidthLightness = Math.Clamp(StartLightness - darkestL, 1, WidthLightness) };

    /// <summary>Whether black is raised along the greys so far that no other ink turns back on the way to the darkest.</summary>
    public bool Steady { get; init; } = true;

    /// <summary>Black along the neutral axis at even steps of L* from 0 to 100, in place of the plain rise; or null.</summary>
    public IReadOnlyList<double>? Ramp { get; init; }

    /// <summary>Black wanted for a colour, 0 to <see cref="Most"/>; continuous with its first derivative where there is no ramp.</summary>
    public double Wanted(Lab colour)
    {
        double strength = colour.Chroma / HalfChroma;
        return Neutral(colour.L) / (1 + (strength * strength));
    }

    private double Neutral(double lightness)
    {
        if (Ramp is { } ramp)
        {
            double place = Math.Clamp(lightness / 100, 0, 1) * (ramp.Count - 1);
            int step = Math.Min((int)place, ramp.Count - 2);
            return ramp[step] + ((ramp[step + 1] - ramp[step]) * (place - step));
        }

        double depth = Math.Clamp((StartLightness - lightness) / WidthLightness, 0, 1);
        return Most * depth * Math.Sqrt(depth);
    }
}
