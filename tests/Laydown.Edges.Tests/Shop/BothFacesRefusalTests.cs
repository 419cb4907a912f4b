using Laydown.Layout.Repeats;
using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Press.Stacks;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Edges.Tests.UseCases;

/// <summary>What cannot be printed on both faces is held back with field, found and wanted.</summary>
public sealed class BothFacesRefusalTests : IDisposable
{
    private readonly ShopBench shop = new();

    public void Dispose() => shop.Dispose();

    public static TheoryData<string, string> Lines() => new()
    {
        { "no such file", "/items/0/backArtwork" }, { "a path", "/items/0/backArtwork" }, { "one side", "/items/0/turn" }, { "back of one side", "/items/0/backArtwork" },
        { "on a roll", "/items/0/turn/way" }, { "to a contour", "/items/0/turn/way" }, { "in panels", "/items/0/turn/way" },
    };

    [Theory, MemberData(nameof(Lines))]
    public async Task A_line_that_cannot_be_is_stopped_by_its_field(string what, string field)
    {
        Item sign = BothFacesLawTests.Sign(BackWay.WorkAndTurn);
        BuildWish one = BothFacesLawTests.BothSides with { SeenFrom = SeenFrom.OneSide, Back = BackPicture.None };
        Item line = what switch
        {
            "no such file" => sign with { BackArtwork = "elsewhere.pdf" },
            "a path" => sign with { BackArtwork = ".." },
            "one side" => sign with { Build = one, BackArtwork = null },
            "back of one side" => sign with { Build = one, Turn = null },
            "on a roll" => sign with { StockId = "banner-roll" },
            "to a contour" => sign with { Finishing = [new(FinishingKind.CutContour, 1)] },
            _ => sign with { Panels = new() },
        };
        if (what == "a path")
        {
            // The form of the file refuses it before anyone looks at the line.
            shop.Put("TW-1", Samples.Order("TW-1", sign));
            string file = Path.Combine(shop.Folder.Orders, "TW-1", "order.json");
            await File.WriteAllTextAsync(file, (await File.ReadAllTextAsync(file)).Replace("back.pdf", "../back.pdf", StringComparison.Ordinal));
            Assert.Equal(field, Assert.Single(Assert.Single((await shop.TakeOrders().TakeAsync(CancellationToken.None)).Refused).Faults).Field);
            return;
        }

        string folder = shop.Put("TW-1", Samples.Order("TW-1", line));
        await File.WriteAllTextAsync(Path.Combine(folder, "back.pdf"), "a back");
        TakenOrders taken = await shop.TakeOrders().TakeAsync(CancellationToken.None);
        ItemRecord item = Assert.Single(Assert.Single(taken.Orders).Items);
        Assert.Equal(ItemState.Stopped, item.State);
        Assert.Equal(field, Assert.Single(item.Faults).Field);
    }

    [Fact]
    public async Task A_back_of_another_size_is_stopped_with_both_sizes()
    {
        PlannedRuns planned = await BothFacesLawTests.PlannedAsync(shop, BothFacesLawTests.Sign(BackWay.Sheetwise), otherBack: true);

        Assert.Empty(planned.Runs);
        Finding finding = Assert.Single((await shop.Store.ItemAsync("TW-1-1", CancellationToken.None))!.Findings, f => f.Code == "pages-differ");
        Assert.Equal((Severity.Stop, 2), (finding.Severity, finding.Page));
        Assert.Contains("540", finding.Measured, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("narrow bleed", "bleed 1 mm", "1.6 mm")]
    [InlineData("tight register", "another edge at the side lay", "at most 0.5 mm")]
    [InlineData("alone", "cannot be turned onto itself", "sheetwise")]
    [InlineData("unlike", "other layers on the second face", "the same layers on both faces")]
    public async Task A_piece_that_cannot_be_laid_so_is_held_back_with_what_would_do(string what, string found, string wanted)
    {
        Item sign = BothFacesLawTests.Sign(BackWay.WorkAndTurn);
        Layer[] unlike = [new(SheetFace.First, InkGroup.Colour, null, null, 1, 100, 0, false), new(SheetFace.Second, InkGroup.White, WhiteSource.Flood, null, 2, 100, 0, false), new(SheetFace.Second, InkGroup.Colour, null, null, 2, 100, 0, false)];
        Item line = what switch
        {
            "narrow bleed" => sign with { BleedMm = 1 },
            "tight register" => sign with { Turn = new(BackWay.WorkAndTurn, RegisterMm: 0.5) },
            "alone" => sign with { WidthMm = 1100, HeightMm = 2100, Quantity = 2 },
            _ => sign with { Build = BothFacesLawTests.BothSides with { Layers = unlike } },
        };

        PlannedRuns planned = await BothFacesLawTests.PlannedAsync(shop, line);
        Assert.Empty(planned.Runs);
        string all = string.Join('\n', planned.Held.SelectMany(h => h.Faults).Concat((await shop.Store.ItemAsync("TW-1-1", CancellationToken.None))!.Faults).Select(f => f.ToString()));
        Assert.Contains(found, all, StringComparison.Ordinal);
        Assert.Contains(wanted, all, StringComparison.Ordinal);
    }
}
