namespace Laydown.Optics.Layers;

/// <summary>What an instrument in air finds on a slab.</summary>
/// <param name="DiffuseReflectance">Share of diffuse light sent back to all sides, gloss included, 0 to 1.</param>
/// <param name="DiffuseTransmittance">Share of diffuse light let through, 0 to 1.</param>
/// <param name="NormalReflectance">Share of light that falls straight on sent back to all sides, gloss included, 0 to 1.</param>
/// <param name="NormalTransmittance">Share of light that falls straight on let through to all sides; by reciprocity also the luminance seen
/// straight on over that of a diffuse lamp behind, 0 to 1.</param>
/// <param name="ReflectanceAt45">Reflectance factor at 45:0 over black, gloss left out, 0 or more; to 3e-3 where deflections go far
/// forward (g 0.85).</param>
/// <param name="TransmittanceAt45">Share of light from 45° let through to all sides; by reciprocity also the luminance seen at 45° over
/// that of a diffuse lamp behind, 0 to 1.</param>
public sealed record SlabReading(
    double DiffuseReflectance,
    double DiffuseTransmittance,
    double NormalReflectance,
    double NormalTransmittance,
    double ReflectanceAt45,
    double TransmittanceAt45)
{
    /// <summary>Reflectance factor at 45:0 before a diffusing backing an air gap away, gloss left out.</summary>
    /// <remarks>R + T_45:d·q·T_d:0/(1 − q·R_d:d); the slab must be the same from both sides.</remarks>
    /// <param name="backing">Its reflectance q, 0 to under 1.</param>
    public double Before(double backing) =>
        ReflectanceAt45 + (TransmittanceAt45 * backing * NormalTransmittance / (1 - (backing * DiffuseReflectance)));
}
