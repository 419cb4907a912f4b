using Laydown.Layout.Panels;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Core.Tests.Layout;

public sealed class PanellingLawTests
{
    private static readonly SizeMm Wall = new(6460, 2460);
    private static readonly double[] Posts = [1200, 2450, 3750, 5080];

    [Theory]
    [InlineData(PanelPattern.Columns, PanelWidths.Equal, 1350, 3000)]
    [InlineData(PanelPattern.Columns, PanelWidths.FullAndRest, 1350, 3000)]
    [InlineData(PanelPattern.Rows, PanelWidths.Free, 7000, 900)]
    [InlineData(PanelPattern.Grid, PanelWidths.Equal, 1200, 900)]
    [InlineData(PanelPattern.Brick, PanelWidths.Free, 1200, 900)]
    [InlineData(PanelPattern.Fewest, PanelWidths.Equal, 1350, 40_000)]
    public void Panels_cover_the_graphic_fit_the_stock_and_overlap_within_the_range(PanelPattern pattern, PanelWidths widths, double wide, double high)
    {
        PanelPlan plan = Solved(new(10, 30, widths, Pattern: pattern), new(wide, high));

        SizeMm most = plan.Turned ? new SizeMm(wide, high).Turned() : new(wide, high);
        Assert.All(plan.Panels, p => Assert.True(p.Part.Size.FitsIn(most), Invariant($"{p.Part.Size} in {most}")));
        Assert.All(plan.Seams, s => Assert.InRange(s.OverlapMm, 10 - 1e-9, 30 + 1e-9));
        Assert.True(Covers(plan, -1e-9));
        Assert.Equal(Enumerable.Range(1, plan.Panels.Count), plan.Panels.Select(p => p.Number));
        Assert.All(plan.Seams, s => Assert.True(s.Under < s.Over));
    }

    [Fact]
    public void A_gap_of_frames_is_left_out_of_the_graphic_and_nothing_else()
    {
        PanelPlan plan = Solved(new(-40, -40), new(1350, 3000));

        Assert.True(plan.Panels.Count > 1);
        Assert.All(plan.Seams, s => Assert.Equal((-40, 40), (s.OverlapMm, s.Zone.WidthMm)));
        Assert.Equal(Wall.AreaM2, plan.Panels.Sum(p => p.Part.Size.AreaM2) + plan.Seams.Sum(s => s.Zone.Size.AreaM2), 9);
    }

    [Fact]
    public void Seams_go_round_a_face_that_equal_panels_would_cut()
    {
        PanelPlan equal = Solved(new(20, 20, PanelWidths.Free), new(1350, 3000));
        RectMm seam = equal.Seams[1].Zone;
        SeamKeepOut face = new(new(seam.XMm - 30 - 60, 900, 180, 300), 50, What: "face");

        PanelPlan clear = Solved(new(20, 20, PanelWidths.Free), new(1350, 3000), face);

        Assert.Equal(equal.Panels.Count, clear.Panels.Count);
        Assert.Equal(0, clear.SeamCost);
        Assert.DoesNotContain(clear.Seams, s => s.Zone.Overlaps(face.Place with { XMm = face.Place.XMm + 30, YMm = face.Place.YMm + 30 }));
    }

    [Fact]
    public void Seams_lie_at_the_posts_that_were_named()
    {
        PanelPlan plan = Solved(new(0, 40, PanelWidths.Free, SeamsAtMm: Posts, SeamsOnlyThere: true), new(1350, 3000));

        Assert.Equal(5, plan.Panels.Count);
        Assert.Equal(Posts, plan.Seams.Select(s => Posts.MinBy(p => Math.Abs(p - Middle(s)))));
        Assert.All(plan.Seams, s => Assert.InRange(Posts.Min(p => Math.Abs(p - Middle(s))), 0, 5 + 1e-9));
    }

    [Fact]
    public void Bricks_keep_their_level_seams_clear_of_the_neighbours()
    {
        PanelPlan plan = Solved(new(10, 10, PanelWidths.Free, Pattern: PanelPattern.Brick, StaggerMm: 150), new(1200, 900));

        List<(int Column, RectMm Zone)> level = [.. plan.Seams.Where(s => !s.Upright).Select(s => (plan.Panels[s.Under - 1].Column, s.Zone))];
        Assert.NotEmpty(level);
        foreach ((int column, RectMm zone) in level)
            Assert.All(level.Where(o => o.Column == column + 1), o => Assert.True(o.Zone.YMm - zone.TopMm >= 150 - 2 || zone.YMm - o.Zone.TopMm >= 150 - 2));
    }

    [Fact]
    public void Hung_from_the_right_the_right_most_panel_comes_first_and_every_upper_one_lies_over_the_lower()
    {
        PanelPlan plan = Solved(new(Pattern: PanelPattern.Grid, FromRight: true), new(1350, 1300));

        Assert.Equal(Wall.WidthMm, plan.Panels[0].Part.RightMm, 6);
        Assert.Equal(0, plan.Panels[0].Part.YMm);
        Assert.All(plan.Seams.Where(s => !s.Upright), s => Assert.True(plan.Panels[s.Over - 1].Part.YMm > plan.Panels[s.Under - 1].Part.YMm));
        Assert.All(plan.Seams.Where(s => s.Upright), s => Assert.True(plan.Panels[s.Over - 1].Part.XMm < plan.Panels[s.Under - 1].Part.XMm));
    }

    [Fact]
    public void A_plan_read_back_from_its_parts_is_the_plan()
    {
        PanelPlan plan = Solved(new(Pattern: PanelPattern.Brick, Widths: PanelWidths.Free), new(1350, 1300));
        PanelPlan back = PanelPlan.Of(plan.Graphic, plan.Turned, [.. plan.Panels.Select(p => p.Part)]);

        Assert.Equal(plan.Panels, back.Panels);
        Assert.Equal(plan.Seams, back.Seams);
    }

    [Fact]
    public void Panels_become_pieces_in_their_order_that_keep_their_direction()
    {
        PanelPlan plan = Solved(new(), new(1350, 3000));
        IReadOnlyList<Piece> pieces = PanelSplit.Split(new("w", Wall, 30, 3, true), plan);

        Assert.Equal(plan.Panels.Select(p => Invariant($"w/{p.Number}")), pieces.Select(p => p.Id));
        Assert.All(pieces, p => Assert.False(p.MayTurn));
        Assert.All(pieces, p => Assert.Equal((3, p.Part!.Value.Size), (p.Quantity, p.Printed)));
    }

    private static double Middle(PanelSeam seam) => seam.Zone.XMm + (seam.Zone.WidthMm / 2) - 30;

    private static PanelPlan Solved(PanelWish wish, SizeMm most, params IReadOnlyList<SeamKeepOut> keepOuts) =>
        Panelling.Solve(new("w", Wall, 30, most, MayTurn: true, wish, keepOuts)).Value;

    // Every point of a grid finer than any panel, and of its corners.
    private static bool Covers(PanelPlan plan, double slack)
    {
        for (double x = 0; x <= plan.Graphic.WidthMm; x += 17)
        {
            for (double y = 0; y <= plan.Graphic.HeightMm; y += 19)
            {
                if (!plan.Panels.Any(p => p.Part.Holds(new(x, y, 0, 0), -slack)))
                    return false;
            }
        }

        return true;
    }
}
