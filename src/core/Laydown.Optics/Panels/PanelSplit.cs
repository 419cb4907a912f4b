namespace Laydown.Optics.Panels;

/// <summary>A hue of the front layer that is shared between a light and a dark ink: one tone, two laydowns.</summary>
public sealed record PanelSplit
{
    /// <summary>A split.</summary>
    /// <param name="dark">Index of the dark ink in its layer.</param>
    /// <param name="light">Index of the light ink in its layer.</param>
    /// <param name="lightSteps">Light ink at even steps of the tone from 0 to 1, parts of one full ink; 0 at the first.</param>
    /// <param name="darkSteps">Dark ink at the same steps.</param>
    /// <exception cref="ArgumentException">Under two steps, another number of steps, or a laydown outside 0 to 1.</exception>
    public PanelSplit(int dark, int light, IReadOnlyList<double> lightSteps, IReadOnlyList<double> darkSteps)
    {
        if (lightSteps.Count < 2 || darkSteps.Count != lightSteps.Count || lightSteps.Concat(darkSteps).Any(v => !(v is >= 0 and <= 1)))
            throw new ArgumentException(Invariant($"Split: wanted as many light as dark steps, two or more, each 0 to 1."), nameof(lightSteps));
        (Dark, Light, LightSteps, DarkSteps) = (dark, light, [.. lightSteps], [.. darkSteps]);
    }

    /// <summary>Index of the dark ink in its layer.</summary>
    public int Dark { get; }

    /// <summary>Index of the light ink in its layer.</summary>
    public int Light { get; }

    /// <summary>Light ink at even steps of the tone.</summary>
    public IReadOnlyList<double> LightSteps { get; }

    /// <summary>Dark ink at even steps of the tone.</summary>
    public IReadOnlyList<double> DarkSteps { get; }
}
