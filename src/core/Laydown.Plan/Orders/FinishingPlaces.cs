using Laydown.Layout.Marks;
using Laydown.Measures;

namespace Laydown.Plan.Orders;

/// <summary>Where the finishing of an item goes on its pieces.</summary>
public static class FinishingPlaces
{
    private const double HemMm = 25, PocketMm = 100, StitchMm = 25, EyeletInsetMm = 20;
    private static readonly PieceEdge[] AllEdges = [PieceEdge.Top, PieceEdge.Bottom, PieceEdge.Left, PieceEdge.Right];

    /// <summary>Width beyond the finished edges that is folded under, mm: hems, and pockets with 25 mm for their stitches. Common practice, no source.</summary>
    public static EdgeRoom Allowance(Item item)
    {
        ArgumentNullException.ThrowIfNull(item);
        EdgeRoom room = EdgeRoom.None;
        foreach (Finishing f in item.Finishing)
        {
            if (f.Kind == FinishingKind.Hem)
                room = room.Or(Along(f.Edges ?? AllEdges, f.WidthMm ?? (item.BleedMm > 0 ? item.BleedMm : HemMm)));
            else if (f.Kind == FinishingKind.PolePocket)
                room = room.Or(Along(PocketEdges(f), (f.WidthMm ?? PocketMm) + StitchMm));
        }

        return room;
    }

    /// <summary>Distance from fold to stitch of pole pockets, mm: their flat width; 0 where there is none.</summary>
    public static EdgeRoom Pockets(Item item)
    {
        ArgumentNullException.ThrowIfNull(item);
        return item.Finishing.Where(f => f.Kind == FinishingKind.PolePocket)
            .Aggregate(EdgeRoom.None, (room, f) => room.Or(Along(PocketEdges(f), f.WidthMm ?? PocketMm)));
    }

    /// <summary>Thickest round pole that goes into a pocket, mm: its girth is twice the flat width. Stiff material wants a thinner one.</summary>
    /// <param name="flatMm">Flat width from fold to stitch, mm, over 0.</param>
    public static double ThickestPoleMm(double flatMm) => 2 * Bounds.Within(flatMm, 0, 1e6) / Math.PI;

    /// <summary>Centres of eyelets, mm from the lower left corner of the finished piece.</summary>
    public static IReadOnlyList<PointMm> Eyelets(Item item)
    {
        ArgumentNullException.ThrowIfNull(item);
        return [.. item.Finishing.Where(f => f.Kind == FinishingKind.Eyelet)
            .SelectMany(f => EyeletPlaces.Of(item.Finished, f.CountEach, Inset(item, f), [.. (f.Edges ?? AllEdges).Distinct()])).Distinct()];
    }

    private static double Inset(Item item, Finishing f) =>
        Math.Clamp(f.InsetMm ?? EyeletInsetMm, 0, Math.Min(item.WidthMm, item.HeightMm) / 2);

    private static IReadOnlyList<PieceEdge> PocketEdges(Finishing f) => f.Edges ?? [PieceEdge.Top, PieceEdge.Bottom];

    private static EdgeRoom Along(IReadOnlyList<PieceEdge> edges, double mm) => new(
        edges.Contains(PieceEdge.Left) ? mm : 0, edges.Contains(PieceEdge.Bottom) ? mm : 0,
        edges.Contains(PieceEdge.Right) ? mm : 0, edges.Contains(PieceEdge.Top) ? mm : 0);
}
