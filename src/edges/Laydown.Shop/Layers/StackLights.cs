using Laydown.Colour.Inks;
using Laydown.Measures;
using Laydown.Optics.Looks;
using Laydown.Press;
using Laydown.Press.Inks;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;

namespace Laydown.Shop.Layers;

/// <summary>The one way from the shop's records to the model of light: stock → sheet, ink of a set → ink of a layer, layer → layer.</summary>
/// <remarks>
/// An ink without optics of its own is taken from the generic class at the solid density that its ink set names; a light ink is then the
/// dark one thinned, a white scatters the same in all bands and hardly absorbs. Whatever rests on that says so by <see cref="RoleLight.IsGeneric"/>.
/// </remarks>
public static class StackLights
{
    /// <summary>Highest solid density the generic inks are scaled to; nothing is seen through more.</summary>
    private const double MostDensity = 4;

    private const int CurveSteps = 100;

    /// <summary>A stock as a bare sheet.</summary>
    /// <returns>The sheet, or a fault where more light comes out than goes in.</returns>
    public static Reading<LookSheet> SheetOf(Stock stock)
    {
        double reflectance = stock.ReflectancePercent / 100, transmittance = stock.TransmittancePercent / 100;
        if (!(reflectance is >= 0 and <= 1))
            return Refused(stock, "/reflectancePercent", stock.ReflectancePercent, "0 % to 100 %");
        if (!(transmittance is >= 0 and <= 1))
            return Refused(stock, "/transmittancePercent", stock.TransmittancePercent, "0 % to 100 %");
        if (stock.Light != SheetLight.Opaque && reflectance + transmittance > 1 + 1e-9)
            return Refused(stock, "/transmittancePercent", stock.TransmittancePercent,
                Invariant($"at most {100 - stock.ReflectancePercent} % beside a reflectance of {stock.ReflectancePercent} %: no more light comes out than goes in"));
        if (stock.Light == SheetLight.Clear && transmittance < 0.001)
            return Refused(stock, "/transmittancePercent", stock.TransmittancePercent, "at least 0.1 % for a clear sheet");

        return Reading.Of(stock.Light switch
        {
            SheetLight.Opaque => LookSheet.Opaque(reflectance),
            SheetLight.Clear => LookSheet.Clear(transmittance),
            _ => LookSheet.Opal(reflectance, Math.Min(transmittance, 1 - reflectance)),
        });
    }

    /// <summary>An ink of a set as light meets it: measured where there are readings, else generic.</summary>
    /// <param name="role">The ink.</param>
    /// <param name="inks">The ink set.</param>
    /// <param name="optics">Its optics, or null while there are none.</param>
    /// <param name="layerStrengthPercent">Strength of the layer, percent of one full laydown, 0 to 200; what acts follows the ink's curve.</param>
    public static LookInk InkOf(InkRole role, InkSet inks, InkOptics? optics, double layerStrengthPercent = 100) =>
        LightOf(role, inks, optics, layerStrengthPercent).Ink;

    /// <summary>The same with where it comes from.</summary>
    /// <inheritdoc cref="InkOf"/>
    public static RoleLight LightOf(InkRole role, InkSet inks, InkOptics? optics, double layerStrengthPercent = 100)
    {
        if (optics?.Find(role) is { } own)
            return Measured(role, own, own.Laydowns(layerStrengthPercent), 1, optics.Name);

        // A light ink is the dark one thinned: the same colourant, less of it.
        double share = Bounds.Within(layerStrengthPercent, 0, 200) / 100;
        if (DarkOf(role) is { } dark && optics?.Find(dark) is { } known)
            return Measured(role, known, share, inks.Find(role)?.Strength ?? 1, optics.Name);
        return new(role, Generic(role, inks, share), OpticsOrigin.Generic, OpticsOrigin.Generic,
            Invariant($"{InkRoleNames.Of(role)}: {GenericWords(role)}, because {inks.Name} has no optics for it."));
    }

    /// <summary>A printed layer as light meets it, its inks in the order given, each at the layer's strength.</summary>
    /// <param name="layer">The layer.</param>
    /// <param name="roles">Its inks in the order of their coverages, at least one.</param>
    /// <param name="inks">The ink set.</param>
    /// <param name="optics">Its optics, or null while there are none.</param>
    public static LookLayer LayerOf(Layer layer, IReadOnlyList<InkRole> roles, InkSet inks, InkOptics? optics) =>
        new(FaceOf(layer.Face), [.. roles.Select(r => InkOf(r, inks, optics, layer.StrengthPercent))]);

    /// <summary>What to send so that a wanted laydown acts: percent at even steps of what is to act, 0 to 100; null where nothing is known.</summary>
    /// <param name="role">The ink.</param>
    /// <param name="optics">Optics of its set, or null.</param>
    public static IReadOnlyList<double>? SentFor(InkRole role, InkOptics? optics) => optics?.Find(role) is { } ink
        ? [.. Enumerable.Range(0, CurveSteps + 1).Select(i => ink.AskedPercent(100.0 * i / CurveSteps))]
        : null;

    /// <summary>What acts of what is sent, codes of 8 bits; null where nothing is known.</summary>
    /// <inheritdoc cref="SentFor"/>
    public static IReadOnlyList<byte>? ActingOf(InkRole role, InkOptics? optics) => optics?.Find(role) is { } ink
        ? [.. Enumerable.Range(0, 256).Select(code => (byte)Math.Round(255 * ink.Laydowns(code / 2.55)))]
        : null;

    /// <summary>The face of the sheet as the model of light names it.</summary>
    public static LookFace FaceOf(SheetFace face) => face == SheetFace.First ? LookFace.First : LookFace.Second;

    /// <summary>What is missing for which ink before a look rests on readings alone; a finding an ink, none where all is known.</summary>
    /// <param name="roles">The inks in question.</param>
    /// <param name="inks">The ink set.</param>
    /// <param name="optics">Its optics, or null while there are none.</param>
    public static IReadOnlyList<Finding> Missing(IEnumerable<InkRole> roles, InkSet inks, InkOptics? optics) =>
        [.. roles.Distinct().Where(r => r != InkRole.Clear).Select(r => LightOf(r, inks, optics)).Where(l => l.IsGeneric).Select(l => new Finding(
            "ink-optics-missing", Severity.Warn, null, null,
            Invariant($"{InkRoleNames.Of(l.Role)} of {inks.Name} has no optics; the look rests on {GenericWords(l.Role)}."),
            optics is null ? "no optics for this ink set" : Invariant($"none for {InkRoleNames.Of(l.Role)} in {optics.Name}"),
            l.Role == InkRole.White
                ? "K·X and S·X of one full laydown, 380 nm to 730 nm: print the chart of white steps and read it over black, over white or through"
                : "K·X of one full laydown, 380 nm to 730 nm: print the chart of white steps and read the colour solids over white and through",
            "take the generic class until the chart has been read", FigureSource.OwnRule))];

    private static RoleLight Measured(InkRole role, InkLight ink, double laydowns, double thinned, string name)
    {
        double share = laydowns * thinned;
        double[] absorption = [.. ink.Absorption.Select(k => k * share)], scatter = [.. ink.Scatter.Select(s => s * share)];
        LookInk look = role == InkRole.White && laydowns > 0
            ? LookInk.White(scatter, absorption)
            : LookInk.TurbidColour([.. absorption.Select(k => k / Math.Log(10))], scatter);
        OpticsOrigin Origin(OpticsOrigin own) => ink.Role != role && own != OpticsOrigin.Generic ? OpticsOrigin.Thinned : own;
        string why = ink.Role == role
            ? Invariant($"{InkRoleNames.Of(role)}: {OpticsWords.Of(ink.AbsorptionFrom)}, {name}.")
            : Invariant($"{InkRoleNames.Of(role)}: {InkRoleNames.Of(ink.Role)} thinned to {100 * thinned:0} %, {name}.");
        return new(role, look, Origin(ink.AbsorptionFrom), Origin(ink.ScatterFrom), why);
    }

    private static LookInk Generic(InkRole role, InkSet inks, double share) => role switch
    {
        InkRole.Cyan => Colour(ProcessInk.Cyan, role, inks, share),
        InkRole.Magenta => Colour(ProcessInk.Magenta, role, inks, share),
        InkRole.Yellow => Colour(ProcessInk.Yellow, role, inks, share),
        InkRole.Black => Colour(ProcessInk.Black, role, inks, share),
        InkRole.LightCyan => Colour(ProcessInk.Cyan, InkRole.Cyan, inks, share * (inks.Find(role)?.Strength ?? 1)),
        InkRole.LightMagenta => Colour(ProcessInk.Magenta, InkRole.Magenta, inks, share * (inks.Find(role)?.Strength ?? 1)),
        InkRole.White => White(inks, share),
        _ => LookInk.Clear,
    };

    private static LookInk Colour(ProcessInk process, InkRole role, InkSet inks, double share) => LookInk.Colour(
        inks.Find(role) is { } ink ? GenericUvInks.Density(process, Math.Min(MostDensity, ink.SolidDensity)) : GenericUvInks.Density(process), share);

    // A white that absorbs nothing lets T = 1 / (1 + S·X) through, so its density in transmission gives S·X.
    private static LookInk White(InkSet inks, double share)
    {
        double scatter = Math.Clamp(Math.Pow(10, inks.Find(InkRole.White)?.SolidDensity ?? 0.9) - 1, 0.01, 100) * share;
        return scatter > 0 ? LookInk.White(Math.Clamp(scatter, 0.001, 100)) : LookInk.Clear;
    }

    private static InkRole? DarkOf(InkRole role) => role switch
    {
        InkRole.LightCyan => InkRole.Cyan,
        InkRole.LightMagenta => InkRole.Magenta,
        _ => null,
    };

    private static string GenericWords(InkRole role) => role switch
    {
        InkRole.White => "a generic white, the same in all bands",
        InkRole.Clear => "a clear that only covers",
        _ => "a generic UV ink, synthetic",
    };

    private static Reading<LookSheet> Refused(Stock stock, string field, double foundPercent, string wanted) =>
        Reading.Refused<LookSheet>(new InputFault(stock.Id + ".json", null, field, Invariant($"{foundPercent} %"), wanted));
}
