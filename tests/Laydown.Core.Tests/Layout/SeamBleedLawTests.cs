using Laydown.Layout.Panels;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Core.Tests.Layout;

/// <summary>Panels that butt: what they print beyond their seams is more of the same picture, fits on the stock, and is gone once they are trimmed.</summary>
public sealed class SeamBleedLawTests
{
    private static readonly SizeMm Most = new(1300, 2000);

    public static IEnumerable<TheoryDataRow<double, double, double, PanelPattern>> Cases() =>
        from width in (double[])[2590, 3300.4, 6460]
        from height in (double[])[1800, 2460.7]
        from bleed in (double[])[0, 3, 8.5]
        from pattern in (PanelPattern[])[PanelPattern.Columns, PanelPattern.Grid, PanelPattern.Brick, PanelPattern.Fewest]
        where pattern != PanelPattern.Columns || height <= Most.HeightMm - (2 * bleed)
        select new TheoryDataRow<double, double, double, PanelPattern>(width, height, bleed, pattern);

    [Theory, MemberData(nameof(Cases))]
    public void Trimmed_at_their_seams_panels_are_the_graphic_and_before_that_they_fit_and_show_the_bleed(
        double width, double height, double bleed, PanelPattern pattern)
    {
        Piece graphic = new("w", new(width, height), 30, 1, false);
        PanelPlan plan = Panelling.Solve(new("w", graphic.Printed, 30, Most, false, new(0, 0, Pattern: pattern, SeamBleedMm: bleed), [])).Value;
        IReadOnlyList<Piece> panels = PanelSplit.Split(graphic, plan);
        Placement[] placed = [.. panels.Select((p, i) => new Placement(p.Id, 1, new(i * 5000, 0, p.Printed.WidthMm, p.Printed.HeightMm), false, p.Part, SeamBleedMm: p.SeamBleedMm))];
        RectMm[] seams = [.. placed.Select(p => p.PartToSeams(graphic.Printed)!.Value)];

        Assert.All(panels, p => Assert.True(p.Printed.FitsIn(Most), Invariant($"{p.Printed}")));
        Assert.Equal(width * height, seams.Sum(s => s.WidthMm * s.HeightMm), tolerance: 0.01);
        for (int i = 0; i < seams.Length; i++)
        {
            RectMm printed = panels[i].Part!.Value;
            Assert.DoesNotContain(seams.Where((_, j) => j != i), s => s.Overlaps(seams[i], 1e-6));
            Assert.True(new RectMm(0, 0, width, height).Holds(printed));
            Beyond(seams[i].XMm - printed.XMm, seams[i].XMm <= 1e-6);
            Beyond(seams[i].YMm - printed.YMm, seams[i].YMm <= 1e-6);
            Beyond(printed.RightMm - seams[i].RightMm, seams[i].RightMm >= width - 1e-6);
            Beyond(printed.TopMm - seams[i].TopMm, seams[i].TopMm >= height - 1e-6);
        }

        // Nothing of the graphic lies beyond its own edges, so there nothing is added.
        void Beyond(double mm, bool atEdge) => Assert.Equal(atEdge ? 0 : bleed, mm, tolerance: 1e-6);
    }

    [Fact]
    public void A_panel_without_it_is_cut_where_it_was() =>
        Assert.Equal(new RectMm(100, 0, 500, 700), new Placement("w/2", 1, new(0, 0, 500, 700), false, new(100, 0, 500, 700)).PartToSeams(new(3000, 700)));
}
