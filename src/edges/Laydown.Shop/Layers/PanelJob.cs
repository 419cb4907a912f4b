using Laydown.Measures;
using Laydown.Optics.Looks;
using Laydown.Optics.Panels;
using Laydown.Press.Inks;
using Laydown.Press.Stacks;
using Laydown.Raster.Separation;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Shop.Layers;

/// <summary>Everything that is settled before pictures are read: what is printed on what, in which light, under which limits.</summary>
/// <param name="Press">Press, inks, sheet, layers.</param>
/// <param name="Layers">The layers with their planes.</param>
/// <param name="Stack">The stack as the solver takes it; light inks only in the layer nearest to the eye.</param>
/// <param name="PlaneOf">For each plane of the look the solver's coverage, −1 for a plane that stays bare.</param>
/// <param name="Day">Light by day.</param>
/// <param name="Night">Light with the lamp on.</param>
/// <param name="Wish">The wish, the white's strength filled in.</param>
/// <param name="Printed">Printed size, mm.</param>
/// <param name="BleedMm">Bleed within it, mm.</param>
internal sealed record PanelJob(
    ItemPress Press,
    IReadOnlyList<LookedLayer> Layers,
    PanelStack Stack,
    IReadOnlyList<int> PlaneOf,
    Scene Day,
    Scene Night,
    LookWish Wish,
    SizeMm Printed,
    double BleedMm)
{
    private const int SplitSteps = 255;

    /// <summary>The job of a request, or why there is none.</summary>
    public static Reading<PanelJob> Of(PanelRequest request, ItemRecord? item, Catalogue catalogue)
    {
        Reading<ItemPress> press = item is not null
            ? ItemPress.Of(item, request.ConditionId, catalogue)
            : ItemPress.On(
                new(request.Piece!.SeenThroughSheet, true, true, WhiteSource.Flood, null, request.Piece.WhitePercent, 0, false),
                request.Piece.StockId, request.Piece.ConditionId, catalogue, "panel");
        double bleed = item?.Item.BleedMm ?? request.Piece!.BleedMm;
        SizeMm printed = item?.Item.Printed ?? new(request.Piece!.WidthMm + (2 * bleed), request.Piece.HeightMm + (2 * bleed));
        string name = item is null ? "panel" : Invariant($"item {item.Item.Id}");
        return press.Then(p => StackLights.SheetOf(p.Stock).Then(sheet => Of(request, p, sheet, printed, bleed, catalogue.OpticsOf(p.Condition), name)));
    }

    /// <summary>The wish as the solver takes it.</summary>
    public PanelWish PanelWish() => new(
        Wish.NightWeight, Wish.White switch { WhiteChoice.Stepped => WhiteUse.Stepped, WhiteChoice.Free => WhiteUse.Free, _ => WhiteUse.Fixed },
        Wish.WhiteStrengths, Wish.LiftPercent, Wish.NightExposure, Wish.KeepContrast, Wish.ViewingDistanceMm);

    /// <summary>Full path of the profile that CMYK without one is taken for.</summary>
    public string ProfilePath(Catalogue catalogue) => RunContexts.ProfilePath(catalogue, Press.Condition);

    private static Reading<PanelJob> Of(
        PanelRequest request, ItemPress press, LookSheet sheet, SizeMm printed, double bleed, InkOptics? optics, string name)
    {
        IReadOnlyList<LookedLayer> layers = StackPlanes.Of(press.Stack, press.Condition, press.InkSet, withLightInks: true);
        LookLayer Solved(LookedLayer layer, bool withLight) => new(
            StackLights.FaceOf(layer.Face), [.. Inks(layer, withLight).Select(p => StackLights.InkOf(p.Role, press.InkSet, optics))]);
        LookLayer[] dark = [.. layers.Select(l => Solved(l, withLight: false))];
        if (!PanelStack.Fits(dark, LookFace.First))
        {
            return Refused(
                name, "layers", string.Join(", ", layers.Select(l => l.Group.ToString().ToLowerInvariant())),
                "colour, white, colour from the viewer inward, as a day and night build has them");
        }

        // Light inks make the layer nearest to the eye smooth; behind the white no grain is seen, so that layer does without.
        int front = new PanelStack(sheet, dark, LookFace.First, LimitsOf(press, layers, front: -1)).DayLayer;
        List<int> planes = [];
        int next = 0;
        for (int layer = 0; layer < layers.Count; layer++)
            planes.AddRange(layers[layer].Inks.Select(p => layer == front || !IsLight(p.Role) ? next++ : -1));
        PanelStack stack = new(
            sheet, [.. layers.Select((l, i) => Solved(l, i == front))], LookFace.First, LimitsOf(press, layers, front), Splits(press, layers[front]));
        (Scene day, Scene night) = press.Scenes();
        Reading<LookWish> wish = WishOf(request.Wish, press.Stack, name);
        return wish.Then(w => Reading.Of(new PanelJob(
            press, layers, stack, planes,
            request.Day?.Scene() ?? day, request.Night?.Scene() ?? night, w, printed, bleed)));
    }

    private static bool IsLight(InkRole role) => role is InkRole.LightCyan or InkRole.LightMagenta;

    private static IEnumerable<LookPlane> Inks(LookedLayer layer, bool withLight) => layer.Inks.Where(p => withLight || !IsLight(p.Role));

    // A light and its dark ink share a tone as the print condition splits them.
    private static List<PanelSplit> Splits(ItemPress press, LookedLayer front)
    {
        List<PanelSplit> splits = [];
        List<InkRole> roles = [.. front.Inks.Select(p => p.Role)];
        foreach ((InkRole dark, InkRole light) in new[] { (InkRole.Cyan, InkRole.LightCyan), (InkRole.Magenta, InkRole.LightMagenta) })
        {
            if (!roles.Contains(dark) || !roles.Contains(light) || press.InkSet.Find(light) is not { } ink)
                continue;
            LightInkSplit split = new(ink.Strength, press.Condition.LightInkTakeOverPercent, 100 * MostOf(press, light));
            double[] Steps(ReadOnlySpan<ushort> codes)
            {
                double[] steps = new double[SplitSteps + 1];
                for (int i = 0; i <= SplitSteps; i++)
                    steps[i] = codes[i * (codes.Length - 1) / SplitSteps] / (double)(codes.Length - 1);
                return steps;
            }

            splits.Add(new(roles.IndexOf(dark), roles.IndexOf(light), Steps(split.Light), Steps(split.Dark)));
        }

        return splits;
    }

    private static double MostOf(ItemPress press, InkRole role) =>
        (press.Condition.Inks.FirstOrDefault(i => i.Role == role)?.LimitPercent ?? 100) / 100;

    private static PanelLimits LimitsOf(ItemPress press, IReadOnlyList<LookedLayer> layers, int front)
    {
        LookedLayer colour = layers.First(l => l.Group == InkGroup.Colour);
        double[] dark = [.. Inks(colour, withLight: false).Select(p => MostOf(press, p.Role))];
        double[] all = front < 0 ? dark : [.. layers[front].Inks.Select(p => MostOf(press, p.Role))];
        double total = press.Condition.TotalLimitPercent / 100;
        return new(all, Math.Min(all.Length, total), dark, Math.Min(dark.Length, total));
    }

    private static Reading<LookWish> WishOf(LookWish wish, LayerStack stack, string name)
    {
        double ordered = stack.Layers.Where(l => l.Group == InkGroup.White).Select(l => l.StrengthPercent / 100).DefaultIfEmpty(1).Average();
        LookWish filled = wish.WhiteStrengths.Count > 0 ? wish : wish with
        {
            WhiteStrengths = wish.White switch
            {
                WhiteChoice.Fixed => [Math.Clamp(ordered, 0.01, 1)],
                WhiteChoice.Stepped => [0.5, 0.75, 1],
                _ => [0.4, 1],
            },
        };
        foreach ((string field, double value, double least, double most) in new[]
        {
            ("nightWeight", wish.NightWeight, 0.01, 100), ("liftPercent", wish.LiftPercent ?? 0, 0, 60), ("nightExposure", wish.NightExposure ?? 1, 0.02, 1),
            ("viewingDistanceMm", wish.ViewingDistanceMm, 200, 100_000),
        })
        {
            if (!(value >= least && value <= most))
                return Reading.Refused<LookWish>(new InputFault(name, null, field, Invariant($"{value}"), Invariant($"{least} to {most}")));
        }

        int count = filled.WhiteStrengths.Count;
        bool fits = filled.White switch { WhiteChoice.Fixed => count == 1, WhiteChoice.Stepped => count is >= 2 and <= 8, _ => count == 2 };
        return fits && filled.WhiteStrengths.All(s => s is >= 0.01 and <= 1)
            ? Reading.Of(filled)
            : Reading.Refused<LookWish>(new InputFault(
                name, null, "whiteStrengths", string.Join(", ", filled.WhiteStrengths.Select(s => Invariant($"{s}"))),
                "shares of full laydown from 0.01 to 1: one when fixed, two to eight when stepped, least and most when free"));
    }

    private static Reading<PanelJob> Refused(string file, string field, string found, string wanted) =>
        Reading.Refused<PanelJob>(new InputFault(file, null, field, found, wanted));
}
