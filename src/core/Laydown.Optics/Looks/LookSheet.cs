using Laydown.Colour.Spectra;
using Laydown.Measures;
using Laydown.Optics.Layers;
using Laydown.Optics.Prints;

namespace Laydown.Optics.Looks;

/// <summary>The bare sheet between the inks: what its inside does with light, its surfaces taken off.</summary>
public sealed record LookSheet
{
    private LookSheet(LayerLight[] inside, bool isClear) => (Inside, IsClear) = (inside, isClear);

    /// <summary>What the inside does, band by band.</summary>
    public IReadOnlyList<LayerLight> Inside { get; }

    /// <summary>Whether one sees through it: light goes straight on and is not spread.</summary>
    public bool IsClear { get; }

    /// <summary>A clear sheet, taken as a slab that light crosses straight.</summary>
    /// <param name="transmittance">Transmittance in air for light that falls straight on, over 0 to 1; 0.92 for 3 mm acrylic.</param>
    public static LookSheet Clear(double transmittance)
    {
        // T = (1 − R0)² t / (1 − R0² t²), solved for t; a sheet cannot let more through than its surfaces do.
        Bounds.Within(transmittance, 1e-3, 1);
        double r = Boundary.Ink.Normal, pass = (1 - r) * (1 - r);
        double t = 2 * transmittance / (pass + Math.Sqrt((pass * pass) + (4 * transmittance * transmittance * r * r)));
        return new(Same(LayerLight.Symmetric(0, Math.Min(1, t))), isClear: true);
    }

    /// <summary>A clear sheet as measured.</summary>
    /// <param name="transmittance">Transmittance in air for light that falls straight on, band by band, each 0.001 to 1.</param>
    /// <exception cref="ArgumentException">Another number of bands or a value outside its range.</exception>
    public static LookSheet Clear(IReadOnlyList<double> transmittance) => transmittance.Count == Bands.Count
        ? new([.. transmittance.Select(t => Clear(t).Inside[0])], isClear: true)
        : throw new ArgumentException(Invariant($"Transmittance: found {transmittance.Count} values; wanted {Bands.Count}."), nameof(transmittance));

    /// <summary>An opal sheet from its reflectance and transmittance in air, gloss included, both for diffuse light.</summary>
    /// <param name="reflectance">0 to 1.</param>
    /// <param name="transmittance">0 to 1; with the reflectance at most 1.</param>
    /// <exception cref="ArgumentException">More light comes out than goes in.</exception>
    public static LookSheet Opal(double reflectance, double transmittance)
    {
        Bounds.Within(reflectance, 0, 1);
        Bounds.Within(transmittance, 0, 1);
        if (reflectance + transmittance > 1 + 1e-9)
            throw new ArgumentException(Invariant($"Sheet: reflectance {reflectance} and transmittance {transmittance}; wanted a sum of at most 1."), nameof(transmittance));

        // A film with equal faces keeps the sum and the difference of both sides apart: take the surfaces off each.
        double sum = Saunderson.TakeOff(reflectance + transmittance, Boundary.Ink);
        double difference = Saunderson.TakeOff(reflectance - transmittance, Boundary.Ink);
        double inside = Math.Clamp((sum + difference) / 2, 0, 1);
        return new(Same(LayerLight.Symmetric(inside, Math.Clamp((sum - difference) / 2, 0, 1 - inside))), isClear: false);
    }

    /// <summary>A sheet that lets nothing through.</summary>
    /// <param name="reflectance">Reflectance at 45:0, gloss left out, 0 to 1.</param>
    public static LookSheet Opaque(double reflectance) => Opaque(Bands.Flat(Bounds.Within(reflectance, 0, 1)));

    /// <summary>A sheet that lets nothing through, as measured.</summary>
    /// <param name="reflectance">Reflectance at 45:0, gloss left out, band by band.</param>
    /// <exception cref="ArgumentException">Another number of bands or a value outside 0 to 1.</exception>
    public static LookSheet Opaque(IReadOnlyList<double> reflectance)
    {
        if (reflectance.Count != Bands.Count || reflectance.Any(r => !(r is >= 0 and <= 1)))
            throw new ArgumentException(Invariant($"Reflectance: wanted {Bands.Count} values from 0 to 1."), nameof(reflectance));
        return new([.. reflectance.Select(r => LayerLight.Symmetric(SolidPrint.Inside(r, Boundary.Ink), 0))], isClear: false);
    }

    private static LayerLight[] Same(LayerLight light)
    {
        LayerLight[] bands = new LayerLight[Bands.Count];
        Array.Fill(bands, light);
        return bands;
    }
}
