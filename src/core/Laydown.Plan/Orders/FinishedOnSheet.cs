using Laydown.Layout.Marks;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Plan.Orders;

/// <summary>The finished piece of an item, or the part of it that a panel shows, where it lies on a sheet with its first printed face up; mm of the sheet.</summary>
public sealed class FinishedOnSheet
{
    private const double Slack = 1e-6;

    private FinishedOnSheet(RectMm trim, EdgeRoom allowance, EdgeRoom pockets, IReadOnlyList<PointMm> eyelets, PieceEdge lowSide) =>
        (Trim, Allowance, Pockets, Eyelets, LowSide) = (trim, allowance, pockets, eyelets, lowSide);

    /// <summary>The finished rectangle.</summary>
    public RectMm Trim { get; }

    /// <summary>Width beyond it that is folded under, at the edges as they lie on the sheet, mm.</summary>
    public EdgeRoom Allowance { get; }

    /// <summary>Distance from fold to stitch of pockets, at the edges as they lie on the sheet, mm.</summary>
    public EdgeRoom Pockets { get; }

    /// <summary>Centres of eyelets.</summary>
    public IReadOnlyList<PointMm> Eyelets { get; }

    /// <summary>Which edge on the sheet is the picture's lower edge.</summary>
    public PieceEdge LowSide { get; }

    /// <summary>What is cut out: the finished rectangle and all that is folded under.</summary>
    public RectMm Outer => new(
        Trim.XMm - Allowance.LeftMm, Trim.YMm - Allowance.BottomMm,
        Trim.WidthMm + Allowance.LeftMm + Allowance.RightMm, Trim.HeightMm + Allowance.BottomMm + Allowance.TopMm);

    /// <summary>The finished piece of a placement; null where a panel shows bleed alone.</summary>
    /// <param name="item">The item.</param>
    /// <param name="placement">Where its piece lies.</param>
    /// <param name="mirrored">Whether it is printed mirrored on that face.</param>
    public static FinishedOnSheet? Of(Item item, Placement placement, bool mirrored)
    {
        ArgumentNullException.ThrowIfNull(item);
        ArgumentNullException.ThrowIfNull(placement);
        PictureOnSheet picture = new(placement, item.Printed, mirrored);
        RectMm finished = new(item.BleedMm, item.BleedMm, item.WidthMm, item.HeightMm), part = placement.PartToSeams(item.Printed) ?? picture.Part;
        double left = Math.Max(finished.XMm, part.XMm), right = Math.Min(finished.RightMm, part.RightMm);
        double low = Math.Max(finished.YMm, part.YMm), high = Math.Min(finished.TopMm, part.TopMm);
        if (right <= left || high <= low)
            return null;

        // At a seam nothing is folded under.
        EdgeRoom AtEdges(EdgeRoom room) => Lying(new(
            part.XMm > finished.XMm + Slack ? 0 : room.LeftMm, part.YMm > finished.YMm + Slack ? 0 : room.BottomMm,
            part.RightMm < finished.RightMm - Slack ? 0 : room.RightMm, part.TopMm < finished.TopMm - Slack ? 0 : room.TopMm), mirrored, placement.QuarterTurns);
        PointMm[] eyelets = [.. FinishingPlaces.Eyelets(item).Select(e => new PointMm(e.XMm + item.BleedMm, e.YMm + item.BleedMm))
            .Where(e => part.Holds(new RectMm(e.XMm, e.YMm, 0, 0), Slack)).Select(picture.Of)];
        PieceEdge[] round = [PieceEdge.Bottom, PieceEdge.Right, PieceEdge.Top, PieceEdge.Left];
        return new(
            picture.Of(new RectMm(left, low, right - left, high - low)), AtEdges(FinishingPlaces.Allowance(item)), AtEdges(FinishingPlaces.Pockets(item)), eyelets,
            round[placement.QuarterTurns]);
    }

    // Each quarter turn brings the lower edge to the right, the right edge to the top.
    private static EdgeRoom Lying(EdgeRoom room, bool mirrored, int quarterTurns)
    {
        EdgeRoom lying = mirrored ? new(room.RightMm, room.BottomMm, room.LeftMm, room.TopMm) : room;
        for (int i = 0; i < quarterTurns; i++)
            lying = new(LeftMm: lying.TopMm, BottomMm: lying.LeftMm, RightMm: lying.BottomMm, TopMm: lying.RightMm);
        return lying;
    }
}
