using Laydown.Colour.Charts;
using Laydown.Measures;

namespace Laydown.Core.Tests.Colour.Charts;

/// <summary>Layouts on boards and rolls: everything on the stock, nothing over another, the set kept.</summary>
public sealed class ChartLayoutLawTests
{
    public static TheoryData<ChartKind, double, double, ReadingWay> Cases => new()
    {
        { ChartKind.Verify, 210, 297, ReadingWay.Hand }, { ChartKind.Linearise, 600, 400, ReadingWay.Strip },
        { ChartKind.CharacteriseMedium, 210, 297, ReadingWay.Strip }, { ChartKind.CharacteriseSmall, 1220, 2440, ReadingWay.Hand },
        { ChartKind.Verify, 100, 120, ReadingWay.Strip },
    };

    [Theory, MemberData(nameof(Cases))]
    public void Patches_and_marks_stay_on_the_stock_and_never_overlap(ChartKind kind, double width, double height, ReadingWay way) =>
        StandClear(Laid(kind, width, height, way));

    [Fact]
    public void Names_stand_under_their_patches_clear_of_all_else()
    {
        ChartSheetForm form = new(new(400, 300), 15, new(40, 30), 6, ReadingWay.Hand, 1) { Named = true };
        IReadOnlyList<ChartSheet> sheets = ChartLayout.Make(Chart(ChartKind.Verify), form).Value;
        StandClear(sheets);
        foreach (PlacedPatch patch in sheets.SelectMany(s => s.Patches))
        {
            ChartLabel name = Assert.Single(sheets[patch.Page - 1].Labels, l =>
                l.Start.XMm == patch.Place.XMm && l.Start.YMm < patch.Place.YMm && l.Start.YMm > patch.Place.YMm - form.GapMm);
            Assert.StartsWith(name.Text.TrimEnd('…'), patch.Patch.Part, StringComparison.Ordinal);
        }

        Assert.Equal("gap", ChartLayout.Make(Chart(ChartKind.Verify), form with { GapMm = 4 }).Faults[0].Field);
    }

    private static void StandClear(IReadOnlyList<ChartSheet> sheets)
    {
        foreach (ChartSheet sheet in sheets)
        {
            RectMm stock = new RectMm(0, 0, sheet.Size.WidthMm, sheet.Size.HeightMm).Grown(-15);
            RectMm[] all = [.. sheet.Patches.Select(p => p.Place), .. sheet.Marks];
            Assert.All(all, r => Assert.True(stock.Holds(r)));
            for (int i = 0; i < all.Length; i++)
            {
                for (int j = i + 1; j < all.Length; j++)
                    Assert.False(all[i].Overlaps(all[j]));
            }

            // Words stand clear of all of it: a line is at most 0.6 em a letter wide on the mean, and it keeps to the border.
            foreach (ChartLabel label in sheet.Labels)
            {
                RectMm words = new(label.Start.XMm, label.Start.YMm - 0.6, label.Text.Length * 0.6 * label.SizeMm, label.SizeMm + 0.2);
                Assert.True(stock.Holds(words, 0.7), label.Text);
                Assert.DoesNotContain(all, r => r.Overlaps(words));
            }
        }
    }

    [Theory, MemberData(nameof(Cases))]
    public void The_set_is_kept_each_patch_once_over_all_sheets(ChartKind kind, double width, double height, ReadingWay way)
    {
        string[] laid = [.. Laid(kind, width, height, way).SelectMany(s => s.Patches).Select(p => p.Patch.Id)];
        Assert.Equal(Chart(kind).Patches.Select(p => p.Id).Order(StringComparer.Ordinal), laid.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Pages_rows_and_columns_name_each_place_once_and_run_in_reading_order()
    {
        IReadOnlyList<ChartSheet> sheets = Laid(ChartKind.CharacteriseMedium, 210, 297, ReadingWay.Hand);
        Assert.True(sheets.Count > 2);
        (int Page, int Row, int Column)[] places = [.. sheets.SelectMany(s => s.Patches).Select(p => (p.Page, p.Row, p.Column))];
        Assert.Equal(places.Order(), places);
        Assert.Equal(places.Length, places.Distinct().Count());
    }

    // Chance alone leaves some dozens of neighbours of the design side by side among 700 patches; exchanges leave next to none.
    [Theory]
    [InlineData(1), InlineData(2), InlineData(3)]
    public void Neighbours_of_the_design_do_not_sit_side_by_side(int seed)
    {
        Chart chart = Chart(ChartKind.CharacteriseMedium);
        Dictionary<string, int> at = chart.Patches.Select((p, i) => (p.Id, i)).ToDictionary(p => p.Id, p => p.i);
        foreach (ChartSheet sheet in ChartLayout.Make(chart, ChartSheetForm.For(new(1220, 2440), ReadingWay.Hand, seed)).Value)
        {
            for (int i = 1; i < sheet.Patches.Count; i++)
            {
                if (sheet.Patches[i].Row == sheet.Patches[i - 1].Row)
                    Assert.NotEqual(1, Math.Abs(at[sheet.Patches[i].Patch.Id] - at[sheet.Patches[i - 1].Patch.Id]));
            }
        }
    }

    [Fact]
    public void Strips_have_a_black_edge_at_both_ends_of_each_row()
    {
        ChartSheet sheet = Laid(ChartKind.Linearise, 600, 400, ReadingWay.Strip)[0];
        Assert.Equal(3 + (2 * sheet.Patches.Max(p => p.Row)), sheet.Marks.Count);
    }

    [Fact]
    public void Row_names_run_on_past_z() =>
        Assert.Equal(["A", "Z", "AA", "AZ", "BA"], new[] { 1, 26, 27, 52, 53 }.Select(ChartLayout.RowName));

    [Fact]
    public void A_stock_that_holds_nothing_is_refused()
    {
        Chart chart = Chart(ChartKind.Verify);
        ChartSheetForm form = ChartSheetForm.For(new(60, 60), ReadingWay.Hand, 1);
        Assert.Equal("sheet", Assert.Single(ChartLayout.Make(chart, form).Faults).Field);
        Assert.False(ChartLayout.Make(chart, form with { MarginMm = double.NaN }).IsTaken);
        Assert.False(ChartLayout.Make(chart, form with { GapMm = -1 }).IsTaken);
        Assert.False(ChartLayout.Make(chart, form with { Patch = new(2, 9) }).IsTaken);
    }

    private static IReadOnlyList<ChartSheet> Laid(ChartKind kind, double width, double height, ReadingWay way) =>
        ChartLayout.Make(Chart(kind), ChartSheetForm.For(new(width, height), way, 7)).Value;

    private static Chart Chart(ChartKind kind) =>
        ChartDesign.Make(kind, [new("Cyan"), new("Magenta"), new("Yellow"), new("Black")], 300, 7).Value;
}
