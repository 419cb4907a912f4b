using Laydown.Measures;
using Laydown.Plan.Runs;
using Laydown.Press.Inks;
using Laydown.Press.Machines;
using Laydown.Press.Stacks;
using Laydown.Raster.Passes;

namespace Laydown.Shop.Run;

/// <summary>From press, mode and layers to the plan of passes and the wish for a forecast.</summary>
internal static class PassWishes
{
    /// <summary>Placement taken where a press does not tell its own; own assumption, about what a belt holds that was calibrated to the
    /// stock.</summary>
    public static DotPlacement Assumed { get; } = new(50, 3, 15);

    /// <summary>The plan of one face of a sheet of that length, mm.</summary>
    public static Reading<PassPlan> PlanOf(PressDescription press, Mode mode, int layers, double lengthMm) =>
        PassPlans.Of(press, mode, layers, Math.Max(1, (int)Math.Round(lengthMm * mode.FeedDpi / 25.4)));

    /// <summary>Layers of each printed face, in the order they are laid down.</summary>
    public static IEnumerable<IGrouping<SheetFace, Layer>> Faces(LayerStack stack) => stack.Layers.GroupBy(l => l.Face).OrderBy(g => g.Key);

    /// <summary>Planes of a face where no picture is at hand: every ink the press has for its layers.</summary>
    public static IReadOnlyList<(int Layer, InkRole Role)> PlanesOf(PressDescription press, IEnumerable<Layer> layers) =>
        [.. layers.Index().SelectMany(l => LayerRoles.Of(l.Item.Group).Where(r => press.Channels.Any(c => c.Role == r)).Select(r => (l.Index, r)))];

    /// <summary>The wish for a face.</summary>
    /// <param name="press">The press.</param>
    /// <param name="plan">Its plan.</param>
    /// <param name="planes">Inks with their layers.</param>
    /// <param name="picture">What is printed, or null for tones of every ink.</param>
    /// <param name="distanceM">Distance of the viewer, m.</param>
    /// <param name="mended">Whether it is printed from dots in which missing nozzles are made good.</param>
    public static BandWish Of(
        PressDescription press, PassPlan plan, IReadOnlyList<(int Layer, InkRole Role)> planes, BandPicture? picture, double distanceM, bool mended = false)
    {
        DotPlacement placement = press.Placement ?? Assumed;
        return new(
            plan,
            [.. planes.Select(p => BandInks.Of(press, p.Role, p.Layer))],
            picture ?? BandPicture.Wedges(planes.Count),
            new(placement.FeedScaleUmPerM, placement.FeedJitterUm, placement.TwoWayUm),
            new(Math.Clamp(distanceM, 0.05, 10_000)),
            mended);
    }
}
