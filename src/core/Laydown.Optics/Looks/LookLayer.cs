using Laydown.Measures;

namespace Laydown.Optics.Looks;

/// <summary>One printed layer: colours and clears, or whites.</summary>
public sealed record LookLayer
{
    /// <summary>A layer.</summary>
    /// <param name="face">The face it is printed on.</param>
    /// <param name="inks">Its inks in the order of their coverages; all white or none.</param>
    /// <exception cref="ArgumentException">No ink, or whites mixed with colours.</exception>
    public LookLayer(LookFace face, IReadOnlyList<LookInk> inks)
    {
        Inks = [.. Bounds.NotEmpty(inks)];
        Face = face;
        if (inks.Any(i => i.IsWhite) && !inks.All(i => i.IsWhite))
            throw new ArgumentException("Layer: wanted whites or colours, not both in one.", nameof(inks));
    }

    /// <summary>The face it is printed on.</summary>
    public LookFace Face { get; }

    /// <summary>Its inks.</summary>
    public IReadOnlyList<LookInk> Inks { get; }

    /// <summary>Whether its inks are whites.</summary>
    public bool IsWhite => Inks[0].IsWhite;

    /// <summary>Whether it scatters: whites, or colours of which one is not clear.</summary>
    public bool Scatters => Inks.Any(i => i.Scatters);
}
