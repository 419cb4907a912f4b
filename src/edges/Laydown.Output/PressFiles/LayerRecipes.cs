using Laydown.Artwork.Pages;
using Laydown.Colour.Inversion;
using Laydown.Measures;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Press.Stacks;
using Laydown.Raster.Masks;
using Laydown.Raster.Separation;
using Laydown.Raster.Tiles;

namespace Laydown.Output.PressFiles;

/// <summary>Writes the recipe of each layer: the one way by which press files and ink figures are made.</summary>
/// <param name="condition">Limits and linearisation.</param>
/// <param name="inkSet">The inks.</param>
/// <param name="link">Link from CMYK to the colour inks, or null where light inks are split off by curves.</param>
internal sealed class LayerRecipes(PrintCondition condition, InkSet inkSet, LinkTables? link)
{
    /// <summary>Ink that counts as none under an image: two of 255 codes, so that the haze of a JPEG file stays bare.</summary>
    private const double BarePercent = 0.8;

    private static readonly InkRole[] Process = [InkRole.Cyan, InkRole.Magenta, InkRole.Yellow, InkRole.Black];

    /// <summary>The recipe of a layer.</summary>
    /// <param name="file">Artwork for messages.</param>
    /// <param name="layer">The layer.</param>
    /// <param name="plates">Plates of its page, by name.</param>
    /// <param name="separations">Named separations of the page.</param>
    /// <param name="pixels">Pixels the stages at press work in: those of the plates where they are not scaled.</param>
    /// <returns>The recipe, or why the layer cannot be made.</returns>
    public Reading<LayerRecipe> Of(
        string file, Layer layer, IReadOnlyList<string> plates, IReadOnlyList<NamedSeparation> separations, PressPixels pixels) =>
        layer.Group == InkGroup.Colour
            ? ColourOf(file, layer)
            : MaskOf(file, layer, plates, separations).Then(mask => Turned(file, layer, mask)).Then(mask => OneInkOf(file, layer, mask, pixels));

    private Reading<LayerRecipe> ColourOf(string file, Layer layer)
    {
        if (layer.StrengthPercent is not (> 0 and <= 100))
            return Refused(file, layer, "StrengthPercent", Invariant($"{layer.StrengthPercent} %"), "over 0 % to 100 % for colour");

        if (condition.Characterisation is not null && condition.InkProfile is not null)
            return CharacterisedColour(layer);

        // Plates become laydown of the four inks, then light inks take their share, then the limits of this print condition hold.
        List<(int DarkInk, LightInkSplit Split, InkRole Light)> pairs = LightPairs();
        List<ITileStage> stages = [new PickInks([0, 1, 2, 3])];
        InkCurve strength = InkCurve.Straight(layer.StrengthPercent);
        stages.Add(new InkCurves([.. Process.Select(r => strength.Then(CurveOf(r)))]));
        InkRole[] roles = [.. Process, .. pairs.Select(p => p.Light)];
        if (pairs.Count > 0)
            stages.Add(new LightInks([.. pairs.Select(p => (p.DarkInk, p.Split))]));
        return Reading.Of(Limited(stages, roles));
    }

    // Profile and link were made from patches sent as they stood: how inks spread is in them, so no curve follows.
    private Reading<LayerRecipe> CharacterisedColour(Layer layer)
    {
        IReadOnlyList<InkRole> roles = link is null ? Process : InkLinks.RolesOf(link);
        List<ITileStage> stages = [new PickInks([0, 1, 2, 3])];
        if (layer.StrengthPercent < 100)
            stages.Add(new InkCurves([.. Process.Select(_ => InkCurve.Straight(layer.StrengthPercent))]));
        if (link is not null)
            stages.Add(new InkLink(link));
        return Reading.Of(Limited(stages, roles));
    }

    // The limits hold at the source, so that what is scaled is what a contone file would hold, and again where a sharp kernel overshoots them.
    private LayerRecipe Limited(List<ITileStage> stages, IReadOnlyList<InkRole> roles)
    {
        int black = roles.ToList().IndexOf(InkRole.Black);
        IReadOnlyList<ITileStage> limits =
            [new PerInkLimit([.. roles.Select(LimitOf)]), new TotalInkLimit(condition.TotalLimitPercent, black < 0 ? null : black)];
        return new([.. stages, .. limits], limits, [.. roles.Select(r => new InkPlane(r, NameOf(r)))], condition.TotalLimitPercent, PressRepeats: true);
    }

    private List<(int DarkInk, LightInkSplit Split, InkRole Light)> LightPairs()
    {
        List<(int, LightInkSplit, InkRole)> pairs = [];
        foreach ((int dark, InkRole role) in new[] { (0, InkRole.LightCyan), (1, InkRole.LightMagenta) })
        {
            // A light ink is used where the set has it and the print condition is calibrated for it.
            if (inkSet.Find(role) is { } ink && condition.Inks.Any(i => i.Role == role))
                pairs.Add((dark, new LightInkSplit(ink.Strength, condition.LightInkTakeOverPercent, LimitOf(role)), role));
        }

        return pairs;
    }

    private static Reading<MaskStages> MaskOf(
        string file, Layer layer, IReadOnlyList<string> plates, IReadOnlyList<NamedSeparation> separations)
    {
        switch (layer.Source)
        {
            case WhiteSource.Flood or null:
                return Reading.Of(new MaskStages([new Flood()], []));
            case WhiteSource.UnderImage:
                string[] spots = [.. separations.Where(s => s.Role == SeparationRole.Colour).Select(s => s.Name)];
                int[] seen = [.. Enumerable.Range(0, plates.Count).Where(p => p < 4 || spots.Contains(plates[p], StringComparer.Ordinal))];
                return Reading.Of(new MaskStages([new AnyInk(seen)], [new Threshold(BarePercent)]));
            case WhiteSource.Inverse:
                // A clear part of the file is no light picture: no white lies there.
                int alpha = plates.ToList().IndexOf("Alpha");
                return Reading.Of(new MaskStages([new Lightness(ofLight: true, alpha < 0 ? null : alpha)], []));
            case WhiteSource.MaskPicture:
                return Reading.Of(new MaskStages([new Lightness(ofLight: false)], []));
            case WhiteSource.Alpha:
                return PlateOf(file, layer, plates, "Alpha");
            case WhiteSource.NamedSeparation:
                return PlateOf(file, layer, plates, layer.SeparationName ?? "");
            default:
                throw new ArgumentException(Invariant($"Source: found {layer.Source}; wanted a known white source."), nameof(layer));
        }
    }

    // A negative is turned before any choke, so that a choke always draws the ink in, whichever way the mask is read.
    private static Reading<MaskStages> Turned(string file, Layer layer, MaskStages mask) => layer.Negative switch
    {
        false => Reading.Of(mask),
        true when Layer.TakesNegative(layer.Source) => Reading.Of(mask with { AtSource = [.. mask.AtSource, new Negative()] }),
        _ => Reading.Refused<MaskStages>(new InputFault(
            file, layer.ArtworkPage, "Negative", Invariant($"true for {layer.Source?.ToString() ?? "no source"}"), "false, or a mask that can be read the other way round")),
    };

    private static Reading<MaskStages> PlateOf(string file, Layer layer, IReadOnlyList<string> plates, string name)
    {
        for (int plate = 4; plate < plates.Count; plate++)
        {
            if (string.Equals(plates[plate], name, StringComparison.OrdinalIgnoreCase))
                return Reading.Of(new MaskStages([new PickInks([plate])], []));
        }

        string found = plates.Count > 4 ? string.Join(", ", plates.Skip(4)) : "none besides the process inks";
        return Reading.Refused<MaskStages>(
            new InputFault(file, layer.ArtworkPage, "separations", found, Invariant($"\"{name}\" for the {layer.Group} layer")));
    }

    private Reading<LayerRecipe> OneInkOf(string file, Layer layer, MaskStages mask, PressPixels pixels)
    {
        if (layer.StrengthPercent is not (> 0 and <= 200))
            return Refused(file, layer, "StrengthPercent", Invariant($"{layer.StrengthPercent} %"), "over 0 % to 200 %");
        InkRole role = RoleOf(layer.Group);
        if (inkSet.Find(role) is null)
            return Refused(file, layer, "inks", Invariant($"no {role} in {inkSet.Id}"), Invariant($"an ink for the {layer.Group} layer"));

        if (layer.Shaping.Faults(layer.Group, layer.Source).FirstOrDefault() is { Field: not null } fault)
            return Refused(file, layer, fault.Field, fault.Found, fault.Wanted);

        // More than one full laydown is shared evenly by two channels of the same ink.
        int planes = layer.StrengthPercent > 100 ? 2 : 1;
        List<ITileStage> stages = [.. mask.AtPress, .. Shaped(layer, pixels)];
        InkCurve strength = layer.StrengthCurve is { } steps ? InkCurve.Through(steps, 100) : InkCurve.Straight(100);
        stages.Add(new InkCurves([strength.Then(InkCurve.Straight(layer.StrengthPercent / planes)).Then(CurveOf(role))]));
        if (planes > 1)
            stages.Add(new PickInks([0, 0]));
        string[] names = planes == 1 ? [NameOf(role)] : [NameOf(role), NameOf(role) + " 2"];
        return Reading.Of(new LayerRecipe(mask.AtSource, stages, [.. names.Select(n => new InkPlane(role, n))], 100 * planes));
    }

    // The choke first, so that the least part is that of the ink as it is printed; then the fade; what is kept out stays bare with a hard edge.
    private static IEnumerable<ITileStage> Shaped(Layer layer, PressPixels pixels)
    {
        // A flood has no edge that could move.
        if (Math.Abs(pixels.Across(layer.ChokeMm)) >= 1 && !layer.IsFlood)
            yield return new Choke(pixels.Across(layer.ChokeMm), pixels.Shape);
        if (Math.Abs(pixels.Across(layer.MinFeatureMm)) > 2)
            yield return new MinFeature(pixels.Across(layer.MinFeatureMm), pixels.Shape);
        if (Math.Abs(pixels.Across(layer.FeatherMm)) > 0.5)
            yield return new Feather(pixels.Across(Math.Abs(layer.FeatherMm)), layer.FeatherMm > 0, pixels.Shape);
        if (layer.KeepOutsMm is { Count: > 0 } places)
            yield return new KeepOuts([.. places.Select(pixels.Of)]);
    }

    private static InkRole RoleOf(InkGroup group) => group switch
    {
        InkGroup.White => InkRole.White,
        InkGroup.Clear => InkRole.Clear,
        InkGroup.BlockOut => InkRole.Black,
        _ => throw new ArgumentException(Invariant($"Group: found {group}; wanted White, Clear or BlockOut."), nameof(group)),
    };

    private InkCurve CurveOf(InkRole role) => condition.Inks.FirstOrDefault(i => i.Role == role) is { } ink
        ? InkCurve.Through(ink.Curve, ink.LimitPercent)
        : InkCurve.Straight(100);

    private double LimitOf(InkRole role) => condition.Inks.FirstOrDefault(i => i.Role == role)?.LimitPercent ?? 100;

    private string NameOf(InkRole role) => inkSet.Find(role)?.Name ?? role.ToString();

    /// <summary>A mask in two parts; neither knows anything of the layer's strength or distances.</summary>
    private sealed record MaskStages(IReadOnlyList<ITileStage> AtSource, IReadOnlyList<ITileStage> AtPress);

    private static Reading<LayerRecipe> Refused(string file, Layer layer, string field, string found, string wanted) =>
        Reading.Refused<LayerRecipe>(new InputFault(file, layer.ArtworkPage, field, found, wanted));
}
