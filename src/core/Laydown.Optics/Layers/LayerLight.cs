namespace Laydown.Optics.Layers;

/// <summary>What a layer does with diffuse light in one band: how much it sends back on each side and lets through each way.</summary>
/// <param name="FrontReflectance">Share of light from the viewer's side sent back, 0 to 1.</param>
/// <param name="BackReflectance">Share of light from behind sent back, 0 to 1.</param>
/// <param name="Inward">Share let through from the viewer's side to behind, 0 or more.</param>
/// <param name="Outward">Share let through from behind to the viewer's side, 0 or more.</param>
/// <remarks>
/// A boundary between two refractive indices is a layer too; then inward and outward differ. In one index they are equal.
/// <c>default</c> is a black, opaque layer.
/// </remarks>
public readonly record struct LayerLight(double FrontReflectance, double BackReflectance, double Inward, double Outward)
{
    /// <summary>No layer at all: everything goes through.</summary>
    public static LayerLight Empty { get; } = new(0, 0, 1, 1);

    /// <summary>A layer that is the same from both sides and both ways.</summary>
    public static LayerLight Symmetric(double reflectance, double transmittance) => new(reflectance, reflectance, transmittance, transmittance);

    /// <summary>This layer laid over another: light goes to and fro between the two without end.</summary>
    /// <remarks>R12 = R1 + T1 T1' R2 / (1 − R1' R2) and T12 = T1 T2 / (1 − R1' R2); R1' is the upper layer seen from behind
    /// [Kubelka1954].</remarks>
    /// <returns>The pair seen as one layer. Order matters: A over B is not B over A.</returns>
    /// <exception cref="ArgumentException">The facing sides return all light (R1' R2 = 1).</exception>
    public LayerLight Over(LayerLight lower)
    {
        double escaping = 1 - (BackReflectance * lower.FrontReflectance);
        if (!(escaping > 0))
            throw new ArgumentException(Invariant($"Facing reflectances {BackReflectance} and {lower.FrontReflectance}: wanted a product under 1."), nameof(lower));

        return new(
            FrontReflectance: FrontReflectance + (Inward * Outward * lower.FrontReflectance / escaping),
            BackReflectance: lower.BackReflectance + (lower.Inward * lower.Outward * BackReflectance / escaping),
            Inward: Inward * lower.Inward / escaping,
            Outward: Outward * lower.Outward / escaping);
    }

    /// <summary>The same layer turned over.</summary>
    public LayerLight Reversed() => new(BackReflectance, FrontReflectance, Outward, Inward);
}
