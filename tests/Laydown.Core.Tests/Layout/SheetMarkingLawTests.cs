using Laydown.Layout.Marks;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Core.Tests.Layout;

public sealed class SheetMarkingLawTests
{
    private static readonly MarkWish Everything = new(Labels: true, Codes: true, Cut: true, Register: true, Finishing: true);

    [Theory]
    [InlineData(PieceEdge.Bottom)]
    [InlineData(PieceEdge.Right)]
    [InlineData(PieceEdge.Top)]
    [InlineData(PieceEdge.Left)]
    public void No_mark_lies_on_a_finished_piece_on_another_piece_on_another_mark_or_off_the_sheet(PieceEdge low)
    {
        (SheetLayout sheet, MarkedPiece[] pieces) = Sheet(gap: 60, low, Everything, fold: 0);
        SheetMarks marks = SheetMarking.Of(sheet, pieces, bothFaces: true);

        Assert.Empty(marks.LeftOut);
        Assert.Equal(Enum.GetValues<MarkKind>().Except([MarkKind.Fold, MarkKind.Stitch, MarkKind.Eyelet]), marks.Marks.Select(m => m.Kind).Distinct().Order());
        Assert.Equal(8 * pieces.Length, marks.Marks.Count(m => m.Kind == MarkKind.Cut));
        Assert.Equal(pieces.Length, marks.Marks.Count(m => m.Kind == MarkKind.Code));
        RectMm printable = new RectMm(0, 0, sheet.Sheet.WidthMm, sheet.Sheet.HeightMm).Grown(-sheet.EdgeMarginMm);
        Assert.All(marks.Marks, m => Assert.True(printable.Holds(m.Box, 0.01)));
        Assert.All(marks.Marks, m => Assert.DoesNotContain(sheet.Placements, p => p.Place.Overlaps(m.Box, 0.01)));
        for (int i = 0; i < marks.Marks.Count; i++)
            Assert.All(marks.Marks.Skip(i + 1), other => Assert.False(marks.Marks[i].Box.Overlaps(other.Box, 0.01)));
    }

    [Fact]
    public void What_has_no_room_is_left_out_and_named()
    {
        (SheetLayout sheet, MarkedPiece[] pieces) = Sheet(gap: 3, PieceEdge.Bottom, Everything, fold: 0);
        SheetMarks marks = SheetMarking.Of(sheet with { Sheet = new(593, 393), EdgeMarginMm = 88 }, pieces, bothFaces: false);

        Assert.Contains(marks.LeftOut, l => l.Contains("label and code", StringComparison.Ordinal));
        Assert.Contains(marks.LeftOut, l => l.Contains("discs", StringComparison.Ordinal));
        Assert.All(marks.Marks, m => Assert.DoesNotContain(pieces, p => p.Trim.Overlaps(m.Box, 0.01)));
    }

    [Fact]
    public void Discs_stand_no_further_apart_than_wanted_and_one_tells_which_way_round_the_sheet_lies()
    {
        (SheetLayout sheet, MarkedPiece[] pieces) = Sheet(gap: 60, PieceEdge.Bottom, new(Labels: false, Codes: false, Register: true, DiscPitchMm: 150), fold: 0);
        PointMm[] discs = [.. SheetMarking.Of(sheet, pieces, bothFaces: false).Marks.Where(m => m.Kind == MarkKind.Disc)
            .Select(m => new PointMm(Math.Round(m.Box.XMm + (m.Box.WidthMm / 2), 3), Math.Round(m.Box.YMm + (m.Box.HeightMm / 2), 3)))];

        Assert.All(discs, d => Assert.InRange(discs.Where(o => o != d).Min(o => Math.Abs(o.XMm - d.XMm) + Math.Abs(o.YMm - d.YMm)), 1, 150));
        double cx = (discs.Min(d => d.XMm) + discs.Max(d => d.XMm)) / 2, cy = (discs.Min(d => d.YMm) + discs.Max(d => d.YMm)) / 2;
        Assert.Contains(discs, d => !discs.Any(o => Math.Abs(o.XMm - ((2 * cx) - d.XMm)) < 0.01 && Math.Abs(o.YMm - ((2 * cy) - d.YMm)) < 0.01));
    }

    [Fact]
    public void In_a_hem_folds_eyelets_label_and_code_stand_within_what_is_folded_under()
    {
        (SheetLayout sheet, MarkedPiece[] pieces) = Sheet(gap: 4, PieceEdge.Bottom, new(), fold: 25);
        SheetMarks marks = SheetMarking.Of(sheet, pieces, bothFaces: false);

        Assert.Empty(marks.LeftOut);
        Assert.Equal(8 * pieces.Length, marks.Marks.Count(m => m.Kind == MarkKind.Fold));
        Assert.Equal(pieces.Sum(p => p.Eyelets.Count) + (4 * pieces.Length), marks.Marks.Count(m => m.Kind == MarkKind.Eyelet));
        foreach (MarkedPiece piece in pieces)
        {
            RectMm outer = piece.Trim.Grown(25);
            Assert.All(marks.Marks.Where(m => m.PieceId == piece.Placement.PieceId && m.Copy == piece.Placement.Copy), m => Assert.True(outer.Holds(m.Box, 0.01) && !piece.Trim.Overlaps(m.Box, 0.01)));
        }
    }

    [Theory]
    [InlineData(3600, 1500, 22, 20, 487)]
    [InlineData(2000, 800, 10, 20, 654)]
    [InlineData(1000, 1000, 4, 25, 950)]
    [InlineData(1000, 1000, 8, 25, 475)]
    public void Eyelets_stand_in_every_corner_and_the_widest_gap_is_as_small_as_their_number_allows(double width, double height, int count, double inset, double widest)
    {
        PieceEdge[] all = [PieceEdge.Top, PieceEdge.Bottom, PieceEdge.Left, PieceEdge.Right];
        IReadOnlyList<PointMm> places = EyeletPlaces.Of(new(width, height), count, inset, all);

        Assert.Equal(count, places.Distinct().Count());
        foreach (double x in new[] { inset, width - inset })
            Assert.All(new[] { inset, height - inset }, y => Assert.Contains(new PointMm(x, y), places));
        Assert.All(places, p => Assert.Equal(inset, Math.Min(Math.Min(p.XMm, width - p.XMm), Math.Min(p.YMm, height - p.YMm)), 9));
        double[] gaps = [.. Gaps(places.Where(p => p.YMm == inset).Select(p => p.XMm)), .. Gaps(places.Where(p => p.XMm == inset).Select(p => p.YMm)),
            .. Gaps(places.Where(p => p.YMm == height - inset).Select(p => p.XMm)), .. Gaps(places.Where(p => p.XMm == width - inset).Select(p => p.YMm))];
        Assert.InRange(gaps.Max(), 0, widest);
        Assert.Equal(count, EyeletPlaces.Count(new(width, height), gaps.Max() + 1e-6, inset, all));
    }

    private static IEnumerable<double> Gaps(IEnumerable<double> places)
    {
        double[] sorted = [.. places.Order()];
        return sorted.Zip(sorted.Skip(1), (a, b) => b - a);
    }

    // Four pieces of 200 × 100 mm, bleed 3 mm or what is folded under.
    private static (SheetLayout Sheet, MarkedPiece[] Pieces) Sheet(double gap, PieceEdge low, MarkWish wish, double fold)
    {
        double bleed = fold > 0 ? fold : 3;
        List<Placement> placements = [];
        for (int i = 0; i < 4; i++)
        {
            RectMm place = new(90 + (i % 2 * (200 + (2 * bleed) + gap)), 90 + (i / 2 * (100 + (2 * bleed) + gap)), 200 + (2 * bleed), 100 + (2 * bleed));
            placements.Add(new("T-1-1", i + 1, place, false));
        }

        MarkedPiece[] pieces = [.. placements.Select(p => new MarkedPiece(
            p, p.Place.Grown(-bleed), EdgeRoom.All(fold), EdgeRoom.None, Eyelets(p.Place.Grown(-bleed)), low, "T-1-1 · panel 1 of 2 · a piece", Invariant($"T-1-1:{p.Copy}"), wish))];
        return (new(new(800, 600), 5, placements, 1, []), pieces);
    }

    private static IReadOnlyList<PointMm> Eyelets(RectMm trim) =>
        [.. EyeletPlaces.Of(trim.Size, 6, 10, [PieceEdge.Top, PieceEdge.Bottom, PieceEdge.Left, PieceEdge.Right]).Select(e => new PointMm(e.XMm + trim.XMm, e.YMm + trim.YMm))];
}
