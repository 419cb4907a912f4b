using Laydown.Colour.Spectra;
using Laydown.Measures;
using Laydown.Optics.Layers;
using Laydown.Optics.Prints;

namespace Laydown.Optics.Looks;

/// <summary>The bare sheet between the inks: what its inside does with light, its surfaces taken off.</summary>
/// <remarks>
/// Clear sheets are slabs that light crosses straight; opal ones are read through radiative transfer (docs/decisions/0007), so that a thin
/// opal, which two fluxes would darken by up to 0.2, looks as it was measured; opaque ones send back only.
/// </remarks>
public sealed record LookSheet
{
    // S·X of a sheet that spreads all light.
    private const double SpreadsAll = 1000;

    private LookSheet(
        LayerLight[] inside, bool isClear, double[] scatter, double[] straight, double glossSeen = 0, bool isApproximate = false) =>
        (Inside, IsClear, Scatter, Straight, GlossSeen, IsApproximate) = (inside, isClear, scatter, straight, glossSeen, isApproximate);

    /// <summary>What the inside does with light that is spread, band by band; of a clear sheet with light that goes straight on.</summary>
    public IReadOnlyList<LayerLight> Inside { get; }

    /// <summary>Whether one sees through it: light goes straight on and is not spread.</summary>
    public bool IsClear { get; }

    /// <summary>S·X of the sheet, band by band: 0 for a clear one, 1000 for one that spreads all light.</summary>
    public IReadOnlyList<double> Scatter { get; }

    /// <summary>Transmittance of the inside for light that nothing spreads, band by band, 0 to 1.</summary>
    public IReadOnlyList<double> Straight { get; }

    /// <summary>Whether readings of an opal sheet fit no slab with smooth faces in some band. Where they are darker than the faces alone,
    /// the clear sheet that lets as much through stands in; else two fluxes do, cut to what can be.</summary>
    public bool IsApproximate { get; }

    /// <summary>Share of the surface's reflection that a viewer out of the gloss sees, 0 smooth to 1 dull; see
    /// <see cref="Textured"/>.</summary>
    public double GlossSeen { get; }

    /// <summary>A clear sheet, taken as a slab that light crosses straight.</summary>
    /// <param name="transmittance">Transmittance in air for light that falls straight on, over 0 to 1; 0.92 for 3 mm acrylic.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or outside its range.</exception>
    public static LookSheet Clear(double transmittance) => Clear(Bands.Flat(Bounds.Within(transmittance, 1e-3, 1)));

    /// <summary>A clear sheet as measured; tinted ones too.</summary>
    /// <param name="transmittance">Transmittance in air for light that falls straight on, band by band, over 0 to 1.</param>
    /// <exception cref="ArgumentException">Another number of bands or a value outside its range.</exception>
    public static LookSheet Clear(IReadOnlyList<double> transmittance)
    {
        CheckBands(transmittance, 1e-6, nameof(transmittance));
        LayerLight[] inside = [.. transmittance.Select(t => LayerLight.Symmetric(0, SlabInside(t)))];
        return new(inside, isClear: true, Bands.Flat(0), [.. inside.Select(i => i.Inward)]);
    }

    /// <summary>An opal sheet from its reflectance and transmittance in air, gloss included, both for diffuse light.</summary>
    /// <param name="reflectance">0 to 1.</param>
    /// <param name="transmittance">0 to 1; with the reflectance at most 1.</param>
    /// <exception cref="ArgumentException">A value outside its range, or more light comes out than goes in.</exception>
    public static LookSheet Opal(double reflectance, double transmittance) => Opal(
        Bands.Flat(Bounds.Within(reflectance, 0, 1)), Bands.Flat(Bounds.Within(transmittance, 0, 1)));

    /// <summary>An opal sheet as measured, gloss included, both for diffuse light.</summary>
    /// <param name="reflectance">Band by band, 0 to 1.</param>
    /// <param name="transmittance">Band by band, 0 to 1; with the reflectance at most 1.</param>
    /// <exception cref="ArgumentException">Another number of bands, a value outside its range, or more light comes out than goes
    /// in.</exception>
    public static LookSheet Opal(IReadOnlyList<double> reflectance, IReadOnlyList<double> transmittance)
    {
        CheckBands(reflectance, 0, nameof(reflectance));
        CheckBands(transmittance, 0, nameof(transmittance));
        LayerLight[] inside = new LayerLight[Bands.Count];
        double[] scatter = Bands.Flat(SpreadsAll), straight = Bands.Flat(0);
        TurbidAmount start = new(0.02, 2);
        bool approximate = false;
        for (int band = 0; band < Bands.Count; band++)
        {
            (double r, double t) = (reflectance[band], transmittance[band]);
            if (r + t > 1 + 1e-9)
                throw new ArgumentException(
                    Invariant($"Sheet: reflectance {r} and transmittance {t}; wanted a sum of at most 1."), nameof(transmittance));
            if (band > 0 && r == reflectance[band - 1] && t == transmittance[band - 1])
                (inside[band], scatter[band], straight[band]) = (inside[band - 1], scatter[band - 1], straight[band - 1]);
            else if (OpalReading.Of(r, t, start) is { } read)
                (inside[band], scatter[band], straight[band], start) = (read.Inside, read.Amount.Scatter, read.Straight, read.Amount);
            else
                (inside[band], scatter[band], straight[band], approximate) = Nearest(r, t);
        }

        return new(inside, isClear: false, scatter, straight, isApproximate: approximate);
    }

    /// <summary>A sheet that lets nothing through.</summary>
    /// <param name="reflectance">Reflectance at 45:0, gloss left out, 0 to 1.</param>
    public static LookSheet Opaque(double reflectance) => Opaque(Bands.Flat(Bounds.Within(reflectance, 0, 1)));

    /// <summary>A sheet that lets nothing through, as measured.</summary>
    /// <param name="reflectance">Reflectance at 45:0, gloss left out, band by band.</param>
    /// <exception cref="ArgumentException">Another number of bands or a value outside 0 to 1.</exception>
    public static LookSheet Opaque(IReadOnlyList<double> reflectance)
    {
        CheckBands(reflectance, 0, nameof(reflectance));
        LayerLight[] inside = [.. reflectance.Select(r => LayerLight.Symmetric(SolidPrint.Inside(r, Boundary.Ink), 0))];
        return new(inside, isClear: false, Bands.Flat(SpreadsAll), Bands.Flat(0));
    }

    /// <summary>The same sheet with rough faces.</summary>
    /// <remarks>
    /// A simple picture: roughness spreads what the outer surface sends back, so that a viewer out of the gloss sees
    /// <paramref name="glossSeen"/> of it added to everything. What comes in and the share of diffused light that the faces hold back stay
    /// as they are: r_i = 1 − (1 − r_e)/n² follows from reciprocity for a face of any form that loses nothing. That a texture blurs what is
    /// seen through it is left out.
    /// </remarks>
    /// <param name="glossSeen">Share seen, 0 smooth to 1 spread evenly to all sides.</param>
    /// <exception cref="ArgumentOutOfRangeException">The share is NaN or outside 0 to 1.</exception>
    public LookSheet Textured(double glossSeen) =>
        new([.. Inside], IsClear, [.. Scatter], [.. Straight], Bounds.Within(glossSeen, 0, 1), IsApproximate);

    // T = (1 − R0)² t / (1 − R0² t²), solved for t; a sheet cannot let more through than its surfaces do.
    private static double SlabInside(double transmittance)
    {
        double r = Boundary.Ink.Normal, pass = (1 - r) * (1 - r);
        double t = 2 * transmittance / (pass + Math.Sqrt((pass * pass) + (4 * transmittance * transmittance * r * r)));
        return Math.Min(1, t);
    }

    // For readings that no slab with smooth faces gives.
    private static (LayerLight Inside, double Scatter, double Straight, bool Approximate) Nearest(double reflectance, double transmittance)
    {
        if (OpalReading.IsDarkerThanClear(reflectance, transmittance))
        {
            OpalReading clear = OpalReading.NearestClear(transmittance);
            return (clear.Inside, 0, clear.Straight, true);
        }

        // A film with equal faces keeps the sum and the difference of both sides apart: take the surfaces off each.
        double sum = Saunderson.TakeOff(reflectance + transmittance, Boundary.Ink);
        double difference = Math.Max(-1, Saunderson.TakeOff(reflectance - transmittance, Boundary.Ink));
        double inside = Math.Clamp((sum + difference) / 2, 0, 1);
        return (LayerLight.Symmetric(inside, Math.Clamp((sum - difference) / 2, 0, 1 - inside)), SpreadsAll, 0, true);
    }

    private static void CheckBands(IReadOnlyList<double> values, double least, string name)
    {
        if (values.Count != Bands.Count || values.Any(v => !(v >= least && v <= 1)))
            throw new ArgumentException(Invariant($"{name}: wanted {Bands.Count} values from {least} to 1."), name);
    }
}
