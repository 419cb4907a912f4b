using Laydown.Artwork.Pages;
using Laydown.Layout.Repeats;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Plan.Runs;
using Laydown.Press.Stacks;
using Laydown.Shop.Artwork;
using Laydown.Shop.Check;
using Laydown.Shop.Layout;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Edges.Tests.UseCases;

/// <summary>Boards printed on both faces, from an order with two files to run, price and words for the press.</summary>
public sealed class BothFacesLawTests : IDisposable
{
    internal static readonly BuildWish BothSides = new(false, false, false, null, null, 0, 0, false, SeenFrom: SeenFrom.BothSides, Back: BackPicture.Own);

    private static readonly CancellationToken None = CancellationToken.None;
    private readonly ShopBench shop = new();

    public void Dispose() => shop.Dispose();

    [Fact]
    public async Task Fronts_and_backs_on_one_sheet_lie_on_each_other_once_it_is_turned_and_the_press_is_set_up_once()
    {
        Run turned = Assert.Single(await PlanAsync(Sign(BackWay.WorkAndTurn))).Run;

        SheetLayout sheet = Assert.Single(turned.Sheets);
        Assert.True(sheet.Faces is { OneFile: true });
        foreach (Placement placed in sheet.Placements)
        {
            Placement seen = TurnedOver.Of(placed, sheet.Sheet, sheet.Faces!.Turn);
            Assert.Single(sheet.Placements, o => o.BackUp == seen.BackUp && o.AngleDegrees == seen.AngleDegrees
                && Math.Abs(o.Place.XMm - seen.Place.XMm) < 1e-6 && Math.Abs(o.Place.YMm - seen.Place.YMm) < 1e-6);
        }

        // Seven were asked for; an eighth comes of the last pair, and it is told.
        Assert.Equal((8, 7), (turned.Items[0].Pieces, turned.Items[0].Asked));
        Assert.Contains(turned.LayoutNotes, n => n.Contains("7 asked for, 8 made", StringComparison.Ordinal) && n.EndsWith("come in pairs.", StringComparison.Ordinal));

        using ShopBench other = new();
        Run sheetwise = Assert.Single(await PlanAsync(other, Sign(BackWay.Sheetwise))).Run;
        Assert.Equal(2 * turned.Time.SetUpMinutes, sheetwise.Time.SetUpMinutes);
        Assert.False(sheetwise.Sheets[0].Faces!.OneFile);
        Assert.DoesNotContain(sheetwise.Sheets[0].Placements, p => p.BackUp);

        // Both faces are printed and paid either way: the same pictures on a piece more.
        double one = turned.Inks.Sum(i => i.PrintedMl), two = sheetwise.Inks.Sum(i => i.PrintedMl);
        Assert.Equal(8.0 / 7, one / two, 1e-9);
    }

    [Fact]
    public async Task Two_files_are_one_artwork_of_two_pages_each_read_from_its_own_file()
    {
        await PlanAsync(Sign(BackWay.Sheetwise));
        ItemRecord item = (await shop.Store.ItemAsync("TW-1-1", None))!;

        Assert.Equal([1, 2], item.Artwork!.Pages.Select(p => p.Number));
        Assert.Equal(("board.pdf", 1), (Path.GetFileName(item.FileOf(1).Path), item.FileOf(1).Page));
        Assert.Equal(("back.pdf", 1), (Path.GetFileName(item.FileOf(2).Path), item.FileOf(2).Page));
        Assert.Equal(("board.pdf", 2), (Path.GetFileName(item.FileOf(3).Path), item.FileOf(3).Page));
    }

    [Fact]
    public void Another_back_is_another_artwork()
    {
        ArtworkFile front = Samples.Artwork(), back = Samples.Artwork("back.pdf") with { Sha256 = new string('e', 64) };

        Assert.NotEqual(JoinedArtwork.Of(front, back).Sha256, JoinedArtwork.Of(front, back with { Sha256 = new string('f', 64) }).Sha256);
        Assert.NotEqual(front.Sha256, JoinedArtwork.Of(front, back).Sha256);
        Assert.Equal("board.pdf", (JoinedArtwork.Of(front with { Name = "board.pdf" }, back)).Name);
    }

    [Fact]
    public async Task The_paper_names_edges_lays_tolerance_growth_and_files()
    {
        Run run = Assert.Single(await PlanAsync(Sign(BackWay.WorkAndTurn))).Run;
        var press = shop.Catalogue.Presses.Single(p => p.Id == run.PressId);
        var stock = shop.Catalogue.Stocks.Single(s => s.Id == run.StockId) with { SizeToleranceMm = 1.5 };

        string Words(bool far) => string.Join('\n', FaceWords.Of(run, press with { FarSideLay = far }, stock, 5).Select(r => r.Words));
        Assert.Contains("± 1.5 mm", Words(far: false), StringComparison.Ordinal);
        Assert.Contains("another edge", Words(far: false), StringComparison.Ordinal);
        Assert.Contains("the bleed of 5 mm covers it", Words(far: false), StringComparison.Ordinal);
        Assert.Contains("turned warm", Words(far: false), StringComparison.Ordinal);
        Assert.Contains("One file for both faces", Words(far: false), StringComparison.Ordinal);
        Assert.Contains("edge a against a side lay at the far side", Words(far: true), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Fronts_and_backs_on_one_sheet_are_not_moved_by_hand_and_sheets_turned_otherwise_keep_their_turn()
    {
        Run run = Assert.Single(await PlanAsync(Sign(BackWay.WorkAndTurn))).Run;
        var opened = await new OpenLayout(shop.Catalogue, shop.Store, null).OpenAsync(run.Id, None);
        Assert.Contains("front and back would part", Assert.Single(opened.Faults).Wanted, StringComparison.Ordinal);

        using ShopBench other = new();
        Run sheetwise = Assert.Single(await PlanAsync(other, Sign(BackWay.Sheetwise) with { Turn = new(About: TurnedAbout.ShortEdge) })).Run;
        Assert.Equal(SheetTurn.HeadToFoot, sheetwise.Sheets[0].Faces!.Turn);
        OpenedLayout byHand = (await new OpenLayout(other.Catalogue, other.Store, null).OpenAsync(sheetwise.Id, None)).Value;
        Assert.Equal(sheetwise.Sheets[0].Faces, Laydown.Layout.Hands.HandSheets.Layouts(byHand.Sheets, byHand.Rules)[0].Faces);
    }

    internal static Item Sign(BackWay way) => ShopBench.Item("TW-1-1", stockId: "foamed-pvc-3") with
    {
        WidthMm = 580,
        BleedMm = 5,
        Quantity = 7,
        Build = BothSides,
        BackArtwork = "back.pdf",
        Turn = new(way),
    };

    private Task<IReadOnlyList<RunRecord>> PlanAsync(Item item) => PlanAsync(shop, item);

    private static async Task<IReadOnlyList<RunRecord>> PlanAsync(ShopBench shop, Item item)
    {
        PlannedRuns planned = await PlannedAsync(shop, item);
        Assert.Empty(planned.Held);
        return planned.Runs;
    }

    /// <summary>Takes, checks and plans one item of two files.</summary>
    internal static async Task<PlannedRuns> PlannedAsync(ShopBench shop, Item item, bool otherBack = false)
    {
        string folder = shop.Put("TW-1", Samples.Order("TW-1", item));
        await File.WriteAllTextAsync(Path.Combine(folder, "back.pdf"), "a back", None);
        await shop.TakeOrders().TakeAsync(None);
        await new CheckItems(shop.Folder, shop.Catalogue, shop.Store, new Sized(item, otherBack), new ShopBench.FakeRenderer()).CheckAsync(None);
        return await new PlanRuns(shop.Catalogue, shop.Store, new ShopBench.FakeMeasure()).PlanAsync(ShopBench.Today, None);
    }

    /// <summary>Artwork as large as its item; the back another size where the test wants it.</summary>
    private sealed class Sized(Item item, bool otherBack) : IArtworkReader
    {
        private readonly ShopBench.FakeReader plain = new();

        public async Task<Reading<ArtworkFile>> ReadAsync(string path, CancellationToken cancellation)
        {
            double b = item.BleedMm, w = item.WidthMm - (otherBack && path.EndsWith("back.pdf", StringComparison.Ordinal) ? 40 : 0), h = item.HeightMm;
            return (await plain.ReadAsync(path, cancellation)).Then(f => Reading.Of(f with
            {
                Pages = [f.Pages[0] with { MediaMm = new(w + (2 * b), h + (2 * b)), TrimMm = new(b, b, w, h), BleedMm = new(0, 0, w + (2 * b), h + (2 * b)) }],
            }));
        }
    }
}
