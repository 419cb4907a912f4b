using Laydown.Measures;
using Laydown.Optics.Looks;
using Laydown.Optics.Panels;
using Laydown.Press.Inks;
using Laydown.Press.Stacks;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Shop.Layers;

/// <summary>Everything that is settled before pictures are read: what is printed on what, in which light, under which limits.</summary>
/// <param name="Press">Press, inks, sheet, layers.</param>
/// <param name="Layers">The layers with their planes.</param>
/// <param name="Stack">The stack as the solver takes it; light inks are not used in it.</param>
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
        List<LookLayer> solved = [];
        List<int> planes = [];
        int next = 0;
        foreach (LookedLayer layer in layers)
        {
            // Light inks would only stand for dark ones that are thinner; a solved panel prints without them.
            bool Solved(LookPlane plane) => plane.Role is not (InkRole.LightCyan or InkRole.LightMagenta);
            planes.AddRange(layer.Inks.Select(p => Solved(p) ? next++ : -1));
            solved.Add(new(StackLights.FaceOf(layer.Face), [.. layer.Inks.Where(Solved).Select(p => StackLights.InkOf(p.Role, press.InkSet, optics))]));
        }

        if (!PanelStack.Fits(solved, LookFace.First))
        {
            return Refused(
                name, "layers", string.Join(", ", layers.Select(l => l.Group.ToString().ToLowerInvariant())),
                "colour, white, colour from the viewer inward, as a day and night build has them");
        }

        (Scene day, Scene night) = press.Scenes();
        Reading<LookWish> wish = WishOf(request.Wish, press.Stack, name);
        return wish.Then(w => Reading.Of(new PanelJob(
            press, layers, new(sheet, solved, LookFace.First, LimitsOf(press, solved, layers)), planes,
            request.Day?.Scene() ?? day, request.Night?.Scene() ?? night, w, printed, bleed)));
    }

    private static PanelLimits LimitsOf(ItemPress press, List<LookLayer> solved, IReadOnlyList<LookedLayer> layers)
    {
        PanelLimits any = new([1], 1, [1], 1);
        int[] colours = [.. Enumerable.Range(0, layers.Count).Where(i => layers[i].Group == InkGroup.Colour && solved[i].Inks.Count > 0)];
        double[] most = [.. layers[colours[0]].Inks.Where(p => p.Role is not (InkRole.LightCyan or InkRole.LightMagenta))
            .Select(p => (press.Condition.Inks.FirstOrDefault(i => i.Role == p.Role)?.LimitPercent ?? 100) / 100)];
        double total = Math.Min(most.Length, press.Condition.TotalLimitPercent / 100);
        return colours.Length == 2 ? new(most, total, most, total) : any;
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
