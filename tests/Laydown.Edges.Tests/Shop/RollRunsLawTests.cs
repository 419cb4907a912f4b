using Laydown.Artwork.Pages;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Press.Machines;
using Laydown.Press.Stocks;
using Laydown.Shop.Artwork;
using Laydown.Shop.Check;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;
using NetTopologySuite.Geometries;

namespace Laydown.Edges.Tests.UseCases;

/// <summary>Runs on rolls and blanks: the width that costs least, two rolls side by side, contours in each other's rectangles, blanks of several sizes in lanes.</summary>
public sealed class RollRunsLawTests : IDisposable
{
    private static readonly CancellationToken None = CancellationToken.None;
    private readonly ShopBench shop = new();

    public void Dispose() => shop.Dispose();

    [Fact]
    public async Task The_width_of_roll_that_costs_least_is_taken_and_the_reason_is_told()
    {
        Stock ordered = shop.Catalogue.Stocks.Single(s => s.Id == "banner-roll");
        Stock narrow = ordered with { Id = "banner-roll-820", Name = "Banner, 820 mm", WidthMm = 820, Price = Money.FromUnits(1.50m), OtherSizeOf = "banner-roll" };
        RunRecord run = Assert.Single(await PlanAsync(c => c with { Stocks = [.. c.Stocks, narrow] }, Piece("TW-1", "banner-roll", 790, 2000, 3)));
        Assert.Equal("banner-roll-820", run.Run.StockId);
        Assert.Null(run.Run.BesideStockIds);
        Assert.All(run.Run.Sheets, s => Assert.Equal(820, s.Sheet.WidthMm));
    }

    [Fact]
    public async Task A_width_on_which_a_piece_would_be_parted_is_left_alone_however_cheap()
    {
        Stock ordered = shop.Catalogue.Stocks.Single(s => s.Id == "banner-roll");
        Stock narrow = ordered with { Id = "banner-roll-820", WidthMm = 820, Price = Money.FromUnits(0.10m), OtherSizeOf = "banner-roll" };
        RunRecord run = Assert.Single(await PlanAsync(c => c with { Stocks = [.. c.Stocks, narrow] }, Piece("TW-1", "banner-roll", 1500, 1500, 2)));
        Assert.Equal("banner-roll", run.Run.StockId);
    }

    [Theory]
    [InlineData("banner-roll", 1280, "banner-roll")]
    [InlineData("banner-roll-900", 900, "banner-roll,banner-roll-900")]
    public async Task Two_rolls_side_by_side_share_the_pieces_advance_together_and_are_each_paid(string second, double width, string expected)
    {
        // Where the second is another width, one roll alone would need more press time for the same material.
        Catalogue Wide(Catalogue c)
        {
            Stock first = c.Stocks.Single(s => s.Id == "banner-roll") with { WidthMm = 1280, OnHand = second == "banner-roll" ? 90 : 40 };
            IEnumerable<Stock> other = second == "banner-roll" ? [] : [first with { Id = second, WidthMm = width, OnHand = 40, Price = Money.FromUnits(first.Price.Units * 900 / 1280), OtherSizeOf = "banner-roll" }];
            IEnumerable<PressDescription> presses = c.Presses.Select(p => p.Rolls.Count < 2 ? p : p with { Rolls = [new("near", 1290, 260, 90, 0), new("far", 1290, 260, 90, 1300)], Costs = p.Costs with { PerHour = Money.FromUnits(200m) } });
            return c with { Stocks = [.. c.Stocks.Select(s => s.Id == first.Id ? first : s), .. other], Presses = [.. presses] };
        }

        RunRecord run = Assert.Single(await PlanAsync(Wide, Piece("TW-1", "banner-roll", 400, 500, 90), Piece("TW-2", "banner-roll", 300, 700, 40)));
        Assert.Equal(2, run.Run.Sheets.Count);
        Assert.Equal(expected, string.Join(',', run.Run.Sheets.Select(s => s.StockId).Distinct().Order(StringComparer.Ordinal)));
        Assert.Equal(2, run.Run.Belt.Lanes.Count);
        Assert.Equal([0.0, 1300.0], run.Run.Belt.Lanes.Select(l => l.StartMm));
        Assert.Equal(run.Run.Sheets.Select(s => s.Sheet.WidthMm), run.Run.Belt.Lanes.Select(l => l.WidthMm));
        Assert.Equal("none", run.Run.Belt.FrontLay);

        // They advance together, every copy lies once, and both lengths are in the price.
        Assert.Single(run.Run.Sheets.Select(s => s.Sheet.HeightMm).Distinct());
        Assert.Equal(130, run.Run.Sheets.SelectMany(s => s.Placements).Select(p => (p.PieceId, p.Copy)).Distinct().Count());
        decimal PerM(string? id) => id == second && second != "banner-roll" ? 2.90m * 900 / 1280 : 2.90m;
        decimal paid = run.Run.Sheets.Sum(s => Math.Round(PerM(s.StockId), 2) * (decimal)s.Sheet.HeightMm / 1000);
        Assert.InRange(run.Run.Cost.Lines[0].Amount.Units - paid, -0.05m, 0.05m);

        // The carriage crosses both, once for the length they share.
        Assert.True(run.Run.Time.PrintMinutes > 0);
    }

    [Fact]
    public async Task Contours_on_a_roll_lie_in_each_others_rectangles_and_keep_their_distance()
    {
        RunRecord run = Assert.Single(await PlanAsync(c => c, Piece("TW-1", "label-roll", 240, 160, 12) with
        {
            Finishing = [new(FinishingKind.CutContour, 1)],
            Artwork = "triangle.pdf",
        }));
        SheetLayout sheet = Assert.Single(run.Run.Sheets);
        Assert.Equal(12, sheet.Placements.Count);
        PieceOutline outline = Assert.Single(sheet.Outlines!);
        Polygon[] lying = [.. sheet.Placements.Select(p => Ring(outline.On(p)[0]))];
        for (int i = 0; i < lying.Length; i++)
        {
            Assert.InRange(lying[i].EnvelopeInternal.MinX, 5 - 0.01, 610);
            Assert.InRange(lying[i].EnvelopeInternal.MaxX, 0, 605 + 0.01);
            Assert.InRange(lying[i].EnvelopeInternal.MinY, 150 - 0.01, 10_000);
            Assert.InRange(lying[i].EnvelopeInternal.MaxY, 0, sheet.Sheet.HeightMm - 150 + 0.01);
            for (int j = 0; j < i; j++)
                Assert.InRange(lying[i].Distance(lying[j]), 5 - 0.01, double.MaxValue);
        }

        // Rectangles of 246 × 166 mm, two abreast on 600 mm, would take six rows of 166 + 5 mm less one gap.
        Assert.InRange(sheet.Sheet.HeightMm, 0, 300 + (6 * 171) - 5 - 100);
        Assert.Contains(sheet.Placements.SelectMany((p, i) => sheet.Placements.Take(i).Select(q => (p, q))), pair => pair.p.Place.Overlaps(pair.q.Place, 0));
    }

    [Fact]
    public async Task Contours_on_two_rolls_side_by_side_advance_together_and_keep_their_distance()
    {
        Catalogue Wide(Catalogue c) => c with
        {
            Stocks = [.. c.Stocks.Select(s => s.Id == "banner-roll" ? s with { WidthMm = 1280, OnHand = 90 } : s)],
            Presses = [.. c.Presses.Select(p => p.Rolls.Count < 2 ? p : p with { Rolls = [new("near", 1290, 260, 90, 0), new("far", 1290, 260, 90, 1300)], Costs = p.Costs with { PerHour = Money.FromUnits(200m) } })],
        };
        RunRecord run = Assert.Single(await PlanAsync(Wide, Piece("TW-1", "banner-roll", 400, 500, 90) with { Finishing = [new(FinishingKind.CutContour, 1)], Artwork = "triangle.pdf" }));
        Assert.Equal(["banner-roll", "banner-roll"], run.Run.Sheets.Select(s => s.StockId));
        Assert.Single(run.Run.Sheets.Select(s => s.Sheet.HeightMm).Distinct());
        Assert.Equal(90, run.Run.Sheets.SelectMany(s => s.Placements).Select(p => p.Copy).Distinct().Count());
        Assert.All(run.Run.Sheets, AssertApart);
    }

    [Fact]
    public async Task Contours_on_a_roll_are_cut_across_into_sections_that_the_press_takes()
    {
        Catalogue Short(Catalogue c) => c with { Presses = [.. c.Presses.Select(p => p with { RollWeb = p.Web with { LongestSectionMm = 700 } })] };
        RunRecord run = Assert.Single(await PlanAsync(Short, Piece("TW-1", "label-roll", 240, 160, 30) with { Finishing = [new(FinishingKind.CutContour, 1)], Artwork = "triangle.pdf" }));
        SheetLayout sheet = Assert.Single(run.Run.Sheets);
        AssertApart(sheet);
        double lead = shop.Catalogue.Presses.First(p => p.Rolls.Count > 0).Web.LeadMm;
        double[] borders = [lead - 2.5, .. sheet.CutsAcrossMm!, sheet.Sheet.HeightMm - lead + 2.5];
        Assert.InRange(borders.Length, 3, 9);
        Assert.All(borders.Zip(borders.Skip(1)), b => Assert.InRange(b.Second - b.First - 5, 100, 700.01));
        Polygon[] lying = [.. sheet.Placements.Select(p => Ring(sheet.OutlineOf(p.PieceId)!.On(p)[0]))];
        Assert.All(lying, p => Assert.Single(borders.Zip(borders.Skip(1)), b => p.EnvelopeInternal.MinY >= b.First + 2.49 && p.EnvelopeInternal.MaxY <= b.Second - 2.49));
    }

    [Fact]
    public async Task Blanks_of_two_sizes_go_through_lanes_of_their_own_in_one_run()
    {
        Stock Small(Catalogue c) => c.Stocks.Single(s => s.Id == "foam-blank") with { Id = "foam-blank-tiny", Name = "Small blank", WidthMm = 300, LengthMm = 400, Price = Money.FromUnits(0.90m), OnHand = 60 };
        Catalogue Both(Catalogue c) => c with
        {
            Stocks = [.. c.Stocks, Small(c)],
            Conditions = [.. c.Conditions.Select(d => d.StockIds.Contains("foam-blank") ? d with { StockIds = [.. d.StockIds, "foam-blank-tiny"] } : d)],
        };
        RunRecord run = Assert.Single(await PlanAsync(Both, Piece("TW-1", "foam-blank", 480, 640, 10), Piece("TW-2", "foam-blank-tiny", 300, 400, 24)));
        Assert.Equal(["foam-blank-tiny"], run.Run.BesideStockIds);
        Assert.Equal(10, run.Run.Belt.Lanes.Where(l => l.BlankId == "foam-blank").Sum(l => l.Blanks));
        Assert.Equal(24, run.Run.Belt.Lanes.Where(l => l.BlankId == "foam-blank-tiny").Sum(l => l.Blanks));
        Assert.Equal(Enumerable.Range(1, run.Run.Belt.Lanes.Count), run.Run.Belt.Lanes.Select(l => l.Loaded).Order());
        Assert.All(run.Run.Belt.Lanes.Zip(run.Run.Belt.Lanes.Skip(1)), p => Assert.True(p.First.StartMm + p.First.WidthMm + 10 <= p.Second.StartMm + 1e-6));
        Assert.Equal((10 * 1.85m) + (24 * 0.90m), run.Run.Cost.Lines[0].Amount.Units);
        Assert.Equal(["foam-blank", "foam-blank-tiny"], run.Run.Sheets.Select(s => s.StockId).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task Blanks_that_cannot_lie_side_by_side_or_differ_in_thickness_get_runs_of_their_own()
    {
        Catalogue With(Catalogue c, Func<Stock, Stock> small, int lanes) => c with
        {
            Stocks = [.. c.Stocks, small(c.Stocks.Single(s => s.Id == "foam-blank") with { Id = "foam-blank-tiny", WidthMm = 300, LengthMm = 400, OnHand = 60 })],
            Conditions = [.. c.Conditions.Select(d => d.StockIds.Contains("foam-blank") ? d with { StockIds = [.. d.StockIds, "foam-blank-tiny"] } : d)],
            Presses = [.. c.Presses.Select(p => p with { MaxLanes = Math.Min(p.MaxLanes, lanes) })],
        };
        Item[] items = [Piece("TW-1", "foam-blank", 480, 640, 10), Piece("TW-2", "foam-blank-tiny", 300, 400, 24)];
        IReadOnlyList<RunRecord> one = await PlanAsync(c => With(c, s => s, 1), items);
        Assert.Equal(["foam-blank", "foam-blank-tiny"], one.Select(r => r.Run.StockId).Order(StringComparer.Ordinal));

        using ShopBench again = new();
        IReadOnlyList<RunRecord> thick = await PlanAsync(again, c => With(c, s => s with { ThicknessMm = 10 }, 4), items);
        Assert.Equal(["foam-blank", "foam-blank-tiny"], thick.Select(r => r.Run.StockId).Order(StringComparer.Ordinal));
    }

    // The gap of a run is 5 mm, less what corners are rounded to.
    private static void AssertApart(SheetLayout sheet)
    {
        Polygon[] lying = [.. sheet.Placements.Select(p => Ring(sheet.OutlineOf(p.PieceId)!.On(p)[0]))];
        for (int i = 0; i < lying.Length; i++)
            for (int j = 0; j < i; j++)
                Assert.InRange(lying[i].Distance(lying[j]), 5 - 0.01, double.MaxValue);
    }

    private static Polygon Ring(IReadOnlyList<PointMm> ring) =>
        new GeometryFactory().CreatePolygon([.. ring.Append(ring[0]).Select(p => new Coordinate(p.XMm, p.YMm))]);

    private static Item Piece(string id, string stock, double width, double height, int quantity) =>
        ShopBench.Item(id + "-1", stockId: stock) with { WidthMm = width, HeightMm = height, Quantity = quantity };

    private Task<IReadOnlyList<RunRecord>> PlanAsync(Func<Catalogue, Catalogue> changed, params Item[] items) => PlanAsync(shop, changed, items);

    private static async Task<IReadOnlyList<RunRecord>> PlanAsync(ShopBench shop, Func<Catalogue, Catalogue> changed, params Item[] items)
    {
        Catalogue catalogue = changed(shop.Catalogue);
        foreach (Item item in items)
            shop.Put(item.Id[..4], new(item.Id[..4], "Saltmarsh Observatory", ShopBench.Today, "", [item]));
        await new TakeOrders(shop.Folder, catalogue, new Laydown.Intake.Orders.OrderReader(), shop.Store, shop.Clock).TakeAsync(None);
        await new CheckItems(shop.Folder, catalogue, shop.Store, new SizedReader(items), new ShopBench.FakeRenderer()).CheckAsync(None);
        PlannedRuns planned = await new PlanRuns(catalogue, shop.Store, new ShopBench.FakeMeasure()).PlanAsync(ShopBench.Today, None);
        Assert.Empty(planned.Held);
        return planned.Runs;
    }
}
