using Laydown.Instances.Polygons;
using Laydown.Layout.Contours;
using Laydown.Layout.Jobs;
using NetTopologySuite.Geometries;

namespace Laydown.Core.Tests.Layout;

/// <summary>Contours on two rolls that advance together, and on rolls cut across into sections.</summary>
public sealed class ContourRollsLawTests
{
    private static readonly PolygonInstance Shapes = new("two", 0, 0,
    [
        new(ContourData.Polygon(0, 40, 90, 40, 90, 0, 160, 70, 90, 140, 90, 100, 0, 100), 30, [0, 90, 180, 270]),
        new(ContourData.Polygon(0, 0, 220, 0, 20, 190), 14, [0, 90, 180, 270]),
    ]);

    [Fact]
    public void Two_rolls_share_the_copies_each_keeps_its_distances_and_neither_is_much_the_longer()
    {
        ContourStrip[] rolls = [new(700, 10), new(500, 10)];
        ContourRollPlan plan = ContourRolls.Solve(ContourData.Pieces(Shapes), rolls, 5, default, null, new(1, 200), default);
        Assert.Empty(plan.Unplaced);
        AssertApart(plan, rolls);
        double most = plan.Rolls.Max(r => r.LengthMm), alone = ContourRolls.Solve(ContourData.Pieces(Shapes), [rolls[0]], 5, default, null, new(1, 200), default).Rolls[0].LengthMm;

        // Widths of 700 and 500 mm: together they need less than three quarters of what the wider needs alone, and differ by less than one large piece.
        Assert.InRange(most, Shapes.ItemArea / 1160, 0.75 * alone);
        Assert.InRange(most - plan.Rolls.Min(r => r.LengthMm), 0, 220);
    }

    [Fact]
    public void A_piece_tied_to_a_roll_lies_on_it()
    {
        ContourStrip[] rolls = [new(700, 10), new(500, 10)];
        ContourRollPlan plan = ContourRolls.Solve(ContourData.Pieces(Shapes), rolls, 5, default, id => id == "1" ? 1 : -1, new(1, 50), default);
        AssertApart(plan, rolls);
        Assert.DoesNotContain(plan.Rolls[0].Spots, s => s.PieceId == "1");
        Assert.Equal(14, plan.Rolls[1].Spots.Count(s => s.PieceId == "1"));
    }

    [Theory]
    [InlineData(0, 500)]
    [InlineData(450, 500)]
    [InlineData(3000, 0)]
    public void Sections_stay_within_their_bounds_and_no_cut_comes_nearer_to_a_piece_than_half_the_gap(double least, double longest)
    {
        ContourStrip roll = new(700, 10);
        ContourRollPlan plan = ContourRolls.Solve(ContourData.Pieces(Shapes), [roll], 6, new(least, longest), null, new(1, 100), default);
        Assert.Empty(plan.Unplaced);
        ContourLength length = plan.Rolls[0];
        AssertApart(plan, [roll], 6);
        double[] borders = [10 - 3, .. length.CutsMm, length.LengthMm - 10 + 3];
        Assert.Equal(longest > 0, borders.Length > 2);
        Polygon[] lying = [.. length.Spots.Select(Lying)];
        Assert.All(borders.Zip(borders.Skip(1)), b => Assert.InRange(b.Second - b.First - 6, Math.Max(least, 100) - 1e-6, longest > 0 ? longest + 1e-6 : 3000.001));
        Assert.All(lying, p => Assert.Single(borders.Zip(borders.Skip(1)), b => p.EnvelopeInternal.MinX >= b.First + 3 - 0.001 && p.EnvelopeInternal.MaxX <= b.Second - 3 + 0.001));
    }

    [Theory]
    [InlineData(1, 0, 600)]
    [InlineData(2, 0, 0)]
    [InlineData(2, 300, 600)]
    public void Jobs_of_contours_on_rolls_keep_their_own_rules_with_overs_and_pieces_tied_to_a_roll(int beside, double least, double longest)
    {
        JobContour arrow = new([0, 40, 90, 40, 90, 0, 160, 70, 90, 140, 90, 100, 0, 100], null);
        JobPiece[] pieces =
        [
            new("arrow", 25, null, null, arrow, null) { OversAllowed = 3 },
            new("card", 9, 210, 99, null, [0], StockId: beside == 2 ? "mesh" : null),
        ];
        JobStock[] rolls = [new("film", JobStockKind.Roll, 700, 20_000, 1, EdgeMarginMm: 10, PricePerMetre: 3), new("mesh", JobStockKind.Roll, 500, 20_000, 1, EdgeMarginMm: 5, PricePerMetre: 2)];
        LayoutJob job = new("rolls", pieces, rolls, new(2, 3, LeadInMm: 100, LeadOutMm: 60, LeastSectionMm: least, LongestSectionMm: longest, RollsSideBySide: beside, CentreGapMm: 20));
        JobLayout layout = JobSolver.Solve(job, new(1, 300), null, default);

        Assert.Empty(JobChecks.Faults(layout));
        Assert.Empty(layout.Unplaced);
        Assert.Equal(beside, layout.Sheets.Count);
        Assert.Equal(longest > 0, layout.Sheets.Any(s => s.CutsAcrossMm is { Count: > 0 }));
        Assert.InRange(layout.Sheets.Sum(s => s.Spots.Count(p => p.PieceId == "arrow")), 25, 28);

        // The judge finds a cut that is moved onto a piece.
        if (layout.Sheets.FirstOrDefault(s => s.CutsAcrossMm is { Count: > 0 }) is { } cut)
        {
            JobLayout broken = layout with { Sheets = [.. layout.Sheets.Select(s => s == cut ? s with { CutsAcrossMm = [.. s.CutsAcrossMm!.Select(c => c - 20)] } : s)] };
            Assert.Contains(JobChecks.Faults(broken), f => f.Field.Contains("cuts across", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void What_finds_no_length_on_two_rolls_is_told()
    {
        JobContour wedge = new([0, 0, 220, 0, 20, 190], null);
        JobStock[] rolls = [new("film", JobStockKind.Roll, 700, 900, 2, EdgeMarginMm: 10)];
        LayoutJob job = new("short", [new("wedge", 60, null, null, wedge, null)], rolls, new(2, 3, LeadInMm: 100, LeadOutMm: 60, RollsSideBySide: 2));
        JobLayout layout = JobSolver.Solve(job, new(1, 50), null, default);
        Assert.Empty(JobChecks.Faults(layout));
        Assert.Equal(60, layout.Sheets.Sum(s => s.Spots.Count) + Assert.Single(layout.Unplaced).Copies);
        Assert.All(layout.Sheets, s => Assert.InRange(s.Size.HeightMm, 500, 900));
    }

    private static void AssertApart(ContourRollPlan plan, ContourStrip[] rolls, double gap = 5)
    {
        ContourSheet[] sheets = [.. plan.Rolls.Select(r => new ContourSheet(null, r.Spots))];
        Assert.Empty(ContourData.Faults(Shapes, new(sheets, 0, 0, 0, []), new([.. plan.Rolls.Select((r, i) => PolygonAsk.Rectangle(r.LengthMm, rolls[i].WidthMm))], gap, 10, ContourData.SlackMm)));
        Assert.Equal(44, plan.Rolls.SelectMany(r => r.Spots).Select(s => (s.PieceId, s.Copy)).Distinct().Count());
    }

    // Turned and moved by the geometry library alone.
    private static Polygon Lying(ContourSpot spot)
    {
        NetTopologySuite.Geometries.Utilities.AffineTransformation move = NetTopologySuite.Geometries.Utilities.AffineTransformation.RotationInstance(spot.AngleDegrees * Math.PI / 180);
        return (Polygon)move.Translate(spot.XMm, spot.YMm).Transform(Shapes.Items[int.Parse(spot.PieceId, System.Globalization.CultureInfo.InvariantCulture)].Shape);
    }
}
