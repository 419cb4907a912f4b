using Laydown.Layout.Hands;
using Laydown.Layout.Search;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Utilities;

namespace Laydown.Core.Tests.Layout.Hands;

/// <summary>Layouts of contours under hands, judged beside a geometry library that knows nothing of this code.</summary>
public sealed class HandContoursLawTests
{
    private static readonly SizeMm Board = new(1000, 800);
    private static readonly GeometryFactory Factory = new();

    // A hook, a ring and a plain rectangle: hooks lie in each other, rectangles in rings.
    private static readonly IReadOnlyList<Piece> Pieces =
        [new("hook", new(300, 260), 3, 6, true), new("ring", new(220, 220), 3, 3, false), new("tile", new(110, 90), 0, 7, true)];

    private static readonly IReadOnlyList<PieceOutline> Outlines =
    [
        new("hook", [new(0, 0), new(300, 0), new(300, 70), new(80, 70), new(80, 260), new(0, 260)], []),
        new("ring", [new(110, 0), new(220, 110), new(110, 220), new(0, 110)], [[new(110, 60), new(60, 110), new(110, 160), new(160, 110)]]),
    ];

    private static readonly HandRules Rules = new(Pieces, Board, 10, 5, CutProcess.Free) { Contours = new(Pieces, Outlines) };

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void Spoilt_layouts_are_judged_as_the_library_judges_them(int seed)
    {
        Random chance = new(seed);
        int sound = 0, wrong = 0;
        for (int i = 0; i < 150; i++)
        {
            HandSheet sheet = new(1, [.. Enumerable.Range(0, 3).Select(_ => Anywhere(chance))]);
            bool keeps = Keeps(sheet);
            Assert.Equal(keeps, LayoutConflicts.OnSheet(sheet, 0, Rules).Count == 0);
            (sound, wrong) = keeps ? (sound + 1, wrong) : (sound, wrong + 1);
        }

        Assert.True(sound > 10 && wrong > 10, Invariant($"{sound} sound, {wrong} wrong: the draw says nothing"));
    }

    [Fact]
    public void Pieces_within_each_others_rectangles_are_sound_where_their_contours_keep_the_gap()
    {
        HandSheet nested = new(1, [new("hook", 10, 10), new("hook", 95, 85)]);
        Assert.Empty(LayoutConflicts.OnSheet(nested, 0, Rules));
        Assert.Equal(ConflictKind.Overlap, LayoutConflicts.OnSheet(nested, 0, Rules with { Contours = null })[0].Kind);
        LayoutConflict near = Assert.Single(LayoutConflicts.OnSheet(nested with { Spots = [nested.Spots[0], nested.Spots[1] with { XMm = 94 }] }, 0, Rules));
        Assert.Equal((ConflictKind.Gap, 4.0, 5.0), (near.Kind, near.Found, near.Wanted));
        LayoutConflict over = Assert.Single(LayoutConflicts.OnSheet(nested with { Spots = [nested.Spots[0], nested.Spots[1] with { XMm = 60 }] }, 0, Rules));
        Assert.Equal((ConflictKind.Overlap, -30.0), (over.Kind, over.Found));
    }

    [Fact]
    public void Clearances_are_those_of_a_slide_to_the_next_contour()
    {
        HandSheet sheet = new(1, [new("hook", 10, 10), new("tile", 200, 200)]);
        Assert.Equal(
            [new(PieceSide.Left, 110, 0), new(PieceSide.Right, 690, null), new(PieceSide.Below, 120, 0), new(PieceSide.Above, 510, null)],
            Clearances.Of(sheet, 1, Rules));
    }

    [Theory]
    [InlineData(98, 86)]
    [InlineData(93, 82)]
    [InlineData(88, 90)]
    public void Let_go_near_a_contour_a_piece_lies_exactly_at_the_gap(double x, double y)
    {
        HandSheet sheet = new(1, [new("hook", 10, 10), new("tile", 600, 600)]);
        HandSpot laid = LayoutEdit.Apply([sheet], new(HandVerb.Move, 0, 1, x, y, ReachMm: 12), Rules).Value.Sheets[0].Spots[1];
        Assert.Empty(LayoutConflicts.OnSheet(new(1, [sheet.Spots[0], laid]), 0, Rules));
        Assert.Equal(5, Lying(sheet.Spots[0]).Distance(Lying(laid)), tolerance: 0.003);
        Assert.True(Math.Abs(laid.XMm - x) <= 12 && Math.Abs(laid.YMm - y) <= 12);
    }

    [Fact]
    public void A_pulled_piece_finds_a_place_among_the_contours_and_its_lock_goes_with_nothing_else_moved()
    {
        IReadOnlyList<HandSheet> sheets = [new(1, [new("hook", 10, 10), new("ring", 400, 300)]), new(1, [new("tile", 20, 20)])];
        HandDone done = LayoutEdit.Apply(sheets, new(HandVerb.Pull, 1, 0, To: 0), Rules).Value;
        Assert.Empty(LayoutConflicts.OnSheet(done.Sheets[0], 0, Rules));
        Assert.Equal(sheets[0].Spots, done.Sheets[0].Spots.Take(2));
        Assert.Empty(done.Sheets[1].Spots);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Finished_around_what_is_locked_every_contour_keeps_its_gap_and_what_is_locked_stays(int seed)
    {
        // Locked within each other's rectangles, on a picture that is printed twice.
        HandSpot[] locked = [new("hook", 400, 300, Locked: true), new("hook", 485, 375, Locked: true)];
        List<IReadOnlyList<HandSheet>> told = [];
        IReadOnlyList<HandSheet> done = FinishRest.Solve([new(2, locked)], Rules, new SearchRules(seed, 60), told.Add, CancellationToken.None);
        Assert.Empty(LayoutConflicts.Of(done, Rules));
        Assert.All(done, s => Assert.True(Keeps(s)));
        Assert.Equal(2, done.Where(s => s.Spots.Any(p => p.Locked)).Sum(s => s.Repeats));
        Assert.All(done.Where(s => s.Spots.Any(p => p.Locked)), s => Assert.Equal(locked, s.Spots.Where(p => p.Locked)));
        Assert.Equal(Text(told[^1]), Text(done));
        Assert.Equal(Text(done), Text(FinishRest.Solve([new(2, locked)], Rules, new SearchRules(seed, 60), null, CancellationToken.None)));
    }

    [Fact]
    public void What_is_saved_holds_the_contours_of_its_pieces_and_counts_their_area()
    {
        SheetLayout layout = HandSheets.Layouts([new(1, [new("ring", 10, 10), new("tile", 400, 10)])], Rules)[0];
        Assert.Equal(["ring", "tile"], layout.Outlines!.Select(o => o.PieceId));
        Assert.Equal(100 * ((220 * 220 / 2.0) - (100 * 100 / 2.0) + (110 * 90)) / (1000 * 800), layout.FillPercent, 6);
        Assert.Equal(new RectMm(0, 230, 1000, 570), Assert.Single(layout.Offcuts));
    }

    private static HandSpot Anywhere(Random chance)
    {
        Piece piece = Pieces[chance.Next(3)];
        return new(piece.Id, chance.Next(0, 400), chance.Next(0, 350), piece.MayTurn ? 90 * chance.Next(4) : 180 * chance.Next(2));
    }

    private static bool Keeps(HandSheet sheet)
    {
        NetTopologySuite.Geometries.Geometry[] lying = [.. sheet.Spots.Select(Lying)];
        NetTopologySuite.Geometries.Geometry inside = Factory.ToGeometry(new Envelope(10 - 1e-6, 990 + 1e-6, 10 - 1e-6, 790 + 1e-6));
        return lying.All(inside.Covers) && !lying.SelectMany((a, i) => lying.Skip(i + 1).Select(b => a.Distance(b))).Any(d => d < 5 - 0.002);
    }

    // Turned about its own corner and moved so that its printed rectangle begins where the spot says.
    private static NetTopologySuite.Geometries.Geometry Lying(HandSpot spot)
    {
        Piece piece = Pieces.Single(p => p.Id == spot.PieceId);
        Polygon drawn = Drawn(piece);
        NetTopologySuite.Geometries.Geometry turned = AffineTransformation.RotationInstance(spot.Angle * Math.PI / 180).Transform(drawn);
        Envelope printed = AffineTransformation.RotationInstance(spot.Angle * Math.PI / 180)
            .Transform(Factory.ToGeometry(new Envelope(0, piece.Printed.WidthMm, 0, piece.Printed.HeightMm))).EnvelopeInternal;
        return AffineTransformation.TranslationInstance(spot.XMm - printed.MinX, spot.YMm - printed.MinY).Transform(turned);
    }

    private static Polygon Drawn(Piece piece)
    {
        PieceOutline? outline = Outlines.FirstOrDefault(o => o.PieceId == piece.Id);
        return outline is null
            ? (Polygon)Factory.ToGeometry(new Envelope(0, piece.Printed.WidthMm, 0, piece.Printed.HeightMm))
            : Factory.CreatePolygon(Ring(outline.Outer), [.. outline.Holes.Select(Ring)]);
    }

    private static LinearRing Ring(IReadOnlyList<PointMm> points) => Factory.CreateLinearRing([.. points.Append(points[0]).Select(p => new Coordinate(p.XMm, p.YMm))]);

    private static string Text(IReadOnlyList<HandSheet> sheets) => string.Join('\n', sheets.Select(s => Invariant($"{s.Repeats} {string.Join(' ', s.Spots)}")));
}
