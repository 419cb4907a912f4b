using Laydown.Demo.Descriptions;
using Laydown.Intake.Artwork;
using Laydown.Intake.Colour;
using Laydown.Intake.Layers;
using Laydown.Intake.Orders;
using Laydown.Output.Charts;
using Laydown.Output.Colour;
using Laydown.Output.Layers;
using Laydown.Plan.Orders;
using Laydown.Shop;
using Laydown.Shop.Check;
using Laydown.Shop.Colour;
using Laydown.Shop.Layers;
using Laydown.Shop.Orders;
using Laydown.Shop.Proof;
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
        LayerServices layers = LayerServices.Of(new LookShelf(folder), catalogue, store, new ItemPlaneFiles(pages), new PairPictures(new IntakeLimits(Path.Combine(Path.GetTempPath(), "laydown-pairs"))), new LookPictures(), new ColourFiles(), clock);
        ShopServices services = new(
            folder.Root, catalogue, store, pages, papers,
            new TakeOrders(folder, catalogue, readers, store, clock),
            new CheckItems(folder, catalogue, store, readers, pages),
            new PlanRuns(catalogue, store, new EvenInk()),
            new MakeRun(folder, catalogue, store, files, board),
            new QuoteOrder(folder, catalogue, store, papers, clock), board,
            ColourServices.Of(
                folder, catalogue, store, pages, new ScreenPictures(), new ColourFiles(), new ChartFiles(Path.Combine(folder.Root, "scratch")), clock),
            layers,
            ProofServices.Of(folder, layers, new MemoryProofStore(), clock));
        SampleShop shop = new(folder.Root, services, store, files);
        await shop.FillAsync();
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
        SampleColour.Write(folder.Root);
        return new CatalogueReader().Read(folder.Catalogue).Value;
    }

    private async Task FillAsync()
    {
        foreach (IGrouping<string, ItemRecord> order in SampleItems.All(Folder).GroupBy(i => i.OrderId))
        {
            Order taken = new(order.Key, order.First().Customer, Today.AddDays(-2), order.Key == "TW-1041" ? "Please pack in tens." : null, [.. order.Select(i => i.Item)]);
            await Store.SaveOrderAsync(new(taken, [.. order]), CancellationToken.None);
        }

        await Store.SaveRefusedOrderAsync(
            "TW-1049/order.json", [new("order.json", null, "/items/0/quantity", "-4", "a whole number from 1 to 100000")], CancellationToken.None);
        PlannedRuns planned = await Services.PlanRuns.PlanAsync(Today, CancellationToken.None);
        if (planned.Held.Count > 0)
            throw new InvalidOperationException(string.Join('\n', planned.Faults));
    }
}

/// <summary>A clock that stands on the sample day at noon.</summary>
internal sealed class FixedDay : TimeProvider
{
    public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

    public override DateTimeOffset GetUtcNow() => new(SampleShop.Today, new(12, 0), TimeSpan.Zero);
}
