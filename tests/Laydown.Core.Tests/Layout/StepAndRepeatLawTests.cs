using Laydown.Layout.Panels;
using Laydown.Layout.Repeats;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Core.Tests.Layout;

public sealed class StepAndRepeatLawTests
{
    [Theory]
    [InlineData(90, 40, 3, 500, true)]
    [InlineData(300, 700, 0, 9, false)]
    [InlineData(301, 407, 5, 31, true)]
    [InlineData(1200, 800, 5, 3, true)]
    public void Every_copy_lies_within_the_margins_and_a_sheet_turned_over_brings_each_piece_onto_another(double width, double height, double gap, int quantity, bool turn)
    {
        SizeMm board = new(1220, 2440);
        LayoutResult result = StepAndRepeat.OnBoards(new("s", new(width, height), 5, quantity, turn), board, 8, new(gap, gap), bothFaces: true);

        Assert.True(result.IsWhole);
        Assert.Equal(quantity, result.Sheets.Sum(s => s.Repeats * s.Placements.Count));
        RectMm inner = new RectMm(0, 0, 1220, 2440).Grown(-8);
        Assert.All(result.Sheets.SelectMany(s => s.Placements), p => Assert.True(inner.Holds(p.Place)));
        foreach (SheetLayout sheet in result.Sheets)
        {
            for (int i = 0; i < sheet.Placements.Count; i++)
                Assert.All(sheet.Placements.Skip(i + 1), o => Assert.False(sheet.Placements[i].Place.Overlaps(o.Place)));
        }

        // Only a full sheet has all its places.
        SheetLayout full = result.Sheets.MaxBy(s => s.Placements.Count)!;
        if (quantity >= full.Placements.Count && result.Sheets[0].Repeats * full.Placements.Count <= quantity && result.Sheets.Count > 1)
        {
            Assert.All(full.Placements, p => Assert.Contains(full.Placements, o => Math.Abs(o.Place.XMm - (1220 - p.Place.RightMm)) < 1e-6 && Math.Abs(o.Place.YMm - p.Place.YMm) < 1e-6));
            Assert.All(full.Placements, p => Assert.Contains(full.Placements, o => Math.Abs(o.Place.YMm - (2440 - p.Place.TopMm)) < 1e-6 && Math.Abs(o.Place.XMm - p.Place.XMm) < 1e-6));
        }
    }

    [Theory]
    [InlineData(90, 40, 5, true)]
    [InlineData(610, 100, 0, true)]
    [InlineData(150, 400, 5, true)]
    public void No_even_grid_takes_more(double width, double height, double gap, bool turn)
    {
        LayoutResult result = StepAndRepeat.OnBoards(new("s", new(width, height), 0, 10_000, turn), new(1220, 2440), 5, new(gap, gap), bothFaces: false);

        int best = 0;
        foreach ((double w, double h) in turn ? new[] { (width, height), (height, width) } : [(width, height)])
        {
            int across = 0, up = 0;
            while (((across + 1) * w) + (across * gap) <= 1210)
                across++;
            while (((up + 1) * h) + (up * gap) <= 2430)
                up++;
            best = Math.Max(best, across * up);
        }

        Assert.Equal(best, result.Sheets[0].Placements.Count);
    }

    [Fact]
    public void A_bleed_that_does_not_cover_the_register_of_two_faces_is_refused()
    {
        LayoutResult result = StepAndRepeat.OnBoards(new("s", new(100, 100), 1, 5, true), new(1220, 2440), 5, new(RegisterMm: 1.5), bothFaces: true);

        Assert.Empty(result.Sheets);
        Assert.Contains("bleed", Assert.Single(result.Unplaced).Found, StringComparison.Ordinal);
        Assert.True(StepAndRepeat.OnBoards(new("s", new(100, 100), 1, 5, true), new(1220, 2440), 5, new(RegisterMm: 1.5), bothFaces: false).IsWhole);
    }

    [Fact]
    public void Along_a_roll_rows_stand_in_even_steps_and_the_shorter_way_is_taken()
    {
        LayoutResult result = StepAndRepeat.OnRoll(new("s", new(94, 44), 2, 24, true), 610, 50_000, 5, 150, new(4, 4));

        SheetLayout sheet = Assert.Single(result.Sheets);
        Assert.Equal(24, sheet.Placements.Count);
        Assert.Equal(Math.Min((4 * 48) - 4, (2 * 98) - 4) + 300, sheet.Sheet.HeightMm, 6);
    }

    [Fact]
    public void Panels_come_in_order_along_the_roll_and_nothing_else_changes()
    {
        Placement[] mixed =
        [
            new("w/3", 1, new(10, 100, 800, 500), false, new RectMm(1600, 0, 800, 500)), new("small", 1, new(820, 100, 100, 100), false),
            new("w/1", 1, new(10, 610, 700, 500), false, new RectMm(0, 0, 700, 500)), new("other", 1, new(10, 1115, 900, 50), false),
            new("w/2", 1, new(10, 1170, 800, 500), false, new RectMm(700, 0, 800, 500)),
        ];
        SheetLayout ordered = Assert.Single(PanelOrder.InOrder([new(new(1000, 1800), 5, mixed, 1, []) { CutsAcrossMm = [605, 1112, 1167] }]));

        Assert.Equal(["w/1", "w/2", "w/3"], ordered.Placements.Where(p => p.Part is not null).OrderBy(p => p.Place.YMm).Select(p => p.PieceId));
        Assert.Equal(mixed.OrderBy(p => p.PieceId, StringComparer.Ordinal).Select(p => (p.PieceId, p.Place.Size, p.Part)), ordered.Placements.OrderBy(p => p.PieceId, StringComparer.Ordinal).Select(p => (p.PieceId, p.Place.Size, p.Part)));
        Assert.All(ordered.CutsAcrossMm!, c => Assert.DoesNotContain(ordered.Placements, p => p.Place.YMm < c && c < p.Place.TopMm));
        Assert.Equal(1670, ordered.Placements.Max(p => p.Place.TopMm), 6);
        for (int i = 0; i < 5; i++)
            Assert.All(ordered.Placements.Skip(i + 1), o => Assert.False(ordered.Placements[i].Place.Grown(2).Overlaps(o.Place)));
    }
}
