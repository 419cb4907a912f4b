using Laydown.Artwork.Pages;
using Laydown.Demo.Descriptions;
using Laydown.Intake.Orders;
using Laydown.Layout.Boards;
using Laydown.Layout.Lanes;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Plan.Runs;
using Laydown.Press.Machines;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;
using Laydown.Shop;
using Laydown.Shop.Check;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Web.Tests.Sample;

/// <summary>A small shop for pages under test: the demo catalogue, five orders, runs planned by the product's own planner, press files by a stand-in.</summary>
internal sealed class SampleShop : IDisposable
{
    public static readonly DateOnly Today = new(2026, 11, 26);

    private SampleShop(string folder, ShopServices services, MemoryStore store, StepwiseFiles files)
    {
        Folder = folder;
        Services = services;
        Store = store;
        Files = files;
    }

    public string Folder { get; }

    public ShopServices Services { get; }

    public MemoryStore Store { get; }

    public StepwiseFiles Files { get; }

    public FixedDay Clock { get; } = new();

    public static async Task<SampleShop> OpenAsync()
    {
        ShopFolder folder = new(Directory.CreateTempSubdirectory("laydown-web-").FullName);
        Catalogue catalogue = ReadCatalogue(folder);
        MemoryStore store = new();
        StepwiseFiles files = new();
        ProgressBoard board = new();
        PlainPapers papers = new();
        NoFiles readers = new();
        FlatPages pages = new();
        FixedDay clock = new();
        ShopServices services = new(
            folder.Root, catalogue, store, pages, papers,
            new TakeOrders(folder, catalogue, readers, store, clock),
            new CheckItems(folder, store, readers, pages, (_, _) => [], (_, _) => Reading.Refused<LayerStack>(new InputFault("sample", null, "build", "none", "none"))),
            new PlanRuns(catalogue, store, (_, _, _) => Task.FromResult(new PlannedRuns([], [], []))),
            new MakeRun(folder, catalogue, store, files, board),
            new QuoteOrder(folder, catalogue, store, papers, clock), board);
        SampleShop shop = new(folder.Root, services, store, files);
        await shop.FillAsync(catalogue);
        return shop;
    }

    public void Dispose()
    {
        Services.MakeRun.Dispose();
        Directory.Delete(Folder, recursive: true);
    }

    private static Catalogue ReadCatalogue(ShopFolder folder)
    {
        DemoCatalogue.Write(folder.Catalogue, CancellationToken.None);
        string profiles = Path.Combine(folder.Catalogue, "profiles");
        Directory.CreateDirectory(profiles);
        foreach (string profile in DemoCatalogue.Profiles)
            File.WriteAllBytes(Path.Combine(profiles, profile), [0]);
        return new CatalogueReader().Read(folder.Catalogue).Value;
    }

    private async Task FillAsync(Catalogue catalogue)
    {
        foreach (IGrouping<string, ItemRecord> order in SampleItems.All(Folder).GroupBy(i => i.OrderId))
        {
            Order taken = new(order.Key, order.First().Customer, Today.AddDays(-2), order.Key == "TW-1041" ? "Please pack in tens." : null, [.. order.Select(i => i.Item)]);
            await Store.SaveOrderAsync(new(taken, [.. order]), CancellationToken.None);
        }

        await Store.SaveRefusedOrderAsync(
            "TW-1049/order.json", [new("order.json", null, "/items/0/quantity", "-4", "a whole number from 1 to 100000")], CancellationToken.None);
        PressRoom room = new(catalogue.Presses, catalogue.InkSets, catalogue.Stocks, catalogue.Conditions);
        List<ItemRecord> ready = [.. SampleItems.All(Folder).Where(i => i.State == ItemState.Ready)];
        FormedRuns formed = RunFormer.Form([.. ready.Select(i => new ReadyItem(i.Item, i.OrderId, 18, null))], room);
        if (formed.Unformed.Count > 0)
            throw new InvalidOperationException(string.Join('\n', formed.Unformed.SelectMany(u => u.Faults)));

        for (int i = 0; i < formed.Runs.Count; i++)
        {
            Laydown.Plan.Runs.Run run = Planned(formed.Runs[i], Invariant($"R-20261126-{i + 1:00}"), catalogue);
            List<ItemRecord> built = [.. ready.Where(r => run.Items.Any(x => x.ItemId == r.Item.Id)).Select(r => r with { Stack = run.Stack })];
            await Store.SaveItemsAsync(built, CancellationToken.None);
            await Store.SaveRunsAsync([new(run, RunState.Waiting, "", null, [], null)], ItemState.Planned, CancellationToken.None);
        }
    }

    private static Laydown.Plan.Runs.Run Planned(FormedRun formed, string id, Catalogue catalogue)
    {
        PressDescription press = formed.Press;
        Stock stock = formed.Stock;
        Piece[] pieces = [.. formed.Items.Select(i => i.Ready.Item).Select(i => new Piece(i.Id, i.Printed, i.BleedMm, i.Quantity, i.UpAlongGrain is null))];
        LayoutResult laid = stock.Kind == StockKind.Blank
            ? BlankLayout.Solve(pieces, stock.Size, 1)
            : BoardLayout.Solve(pieces, new(stock.Size, press.EdgeMarginMm, 8, CutProcess.Free), CancellationToken.None);
        Belt belt = new(press.BeltWidthMm, press.MaxSheetLengthMm, [.. press.Zones.Select(z => new BeltZone(z.Id, z.StartMm, z.WidthMm))], press.Lays, press.MaxLanes);
        BeltPlace place = stock.Kind == StockKind.Blank
            ? LanePlan.Solve(stock.Id, stock.Size, laid.SheetCount, true, belt).Value
            : BeltPlaces.ForBoard(stock.Id, stock.Size, laid.SheetCount, belt).Value;
        PlannedItem[] items = [.. formed.Items.Select(i => new PlannedItem(i.Ready.Item, i.Ready.OrderId, Ink(i.Stack, press), 18, null, null))];
        return RunPlanner.Plan(new(id, press, formed.InkSet, stock, formed.Condition, catalogue.Rates, formed.Stack, items, laid.Sheets, place)).Value;
    }

    private static List<LayerCoverage> Ink(LayerStack stack, PressDescription press) =>
        [.. stack.Layers.SelectMany((layer, n) => LayerRoles.Of(layer.Group)
            .Where(r => press.Channels.Any(c => c.Role == r))
            .Select((role, k) => new LayerCoverage(n, role, layer.Group == InkGroup.Colour ? 0.08 + (0.05 * k) : 0.9, layer.Group == InkGroup.Colour ? 2.2 : 1)))];
}

/// <summary>A clock that stands on the sample day at noon.</summary>
internal sealed class FixedDay : TimeProvider
{
    public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

    public override DateTimeOffset GetUtcNow() => new(SampleShop.Today, new(12, 0), TimeSpan.Zero);
}
