using Laydown.Demo.Descriptions;
using Laydown.Intake.Artwork;
using Laydown.Intake.Colour;
using Laydown.Intake.Layers;
using Laydown.Intake.Orders;
using Laydown.Output.Charts;
using Laydown.Output.Colour;
using Laydown.Output.Documents;
using Laydown.Output.Layers;
using Laydown.Output.Layout;
using Laydown.Output.Pyramids;
using Laydown.Plan.Orders;
using Laydown.Shop;
using Laydown.Shop.Check;
using Laydown.Shop.Colour;
using Laydown.Shop.Layers;
using Laydown.Shop.Log;
using Laydown.Shop.Orders;
using Laydown.Shop.Press;
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

    public required MemoryProofStore Proofs { get; init; }

    public TimeProvider Clock => Services.Clock;

    /// <summary>Path of a proof link that is open, with one answer.</summary>
    public string OpenProof { get; private set; } = "";

    /// <summary>Path of a proof link that was withdrawn.</summary>
    public string ClosedProof { get; private set; } = "";

    /// <param name="pricing">Measures ink where an order is priced; null for the even ink that runs are planned with.</param>
    public static async Task<SampleShop> OpenAsync(IInkMeasure? pricing = null)
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
        FlatPairs pairs = new(Path.Combine(folder.Root, "scratch"));
        LayerServices layers = LayerServices.Of(new LookShelf(folder), catalogue, store, new ItemPlaneFiles(pages), pairs, new LookPictures(), new ColourFiles(), clock);
        MemoryProofStore proofs = new();
        MemoryStockRoom room = new();
        TryOrder trying = new(catalogue, store, pricing ?? new EvenInk());
        ShopServices services = new(
            folder.Root, catalogue, store, pages, papers,
            new TakeOrders(folder, catalogue, readers, store, clock),
            new CheckItems(folder, catalogue, store, readers, pages),
            new PlanRuns(catalogue, store, new EvenInk()),
            new MakeRun(folder, catalogue, store, files, board),
            new QuoteOrder(folder, catalogue, store, papers, clock, trying), board,
            ColourServices.Of(
                folder, catalogue, store, pages, new ScreenPictures(), new ColourFiles(), new ChartFiles(Path.Combine(folder.Root, "scratch")), clock),
            layers,
            ProofServices.Of(folder, layers, new(catalogue, store, pairs), proofs, clock))
        {
            Clock = clock,
            Pictures = new ScreenPictures(),
            LayoutFiles = new LayoutWriter(),
            Press = PressServices.Of(catalogue, store, new MemoryCareBook(), room, new PressPapers(), clock),
            Log = LogServices.Of(catalogue, store, new MemoryLogStore(), clock, room),
            TryOrder = trying,
            Sheets = SheetServices.Of(folder, catalogue, store, new PressPlanes(folder.Pyramids), new LookPictures()),
        };
        SampleShop shop = new(folder.Root, services, store, files) { Proofs = proofs };
        await shop.FillAsync();
        return shop;
    }

    public void Dispose()
    {
        Services.MakeRun.Dispose();
        RemoveFolder(tries: 50);
    }

    // A picture that nobody waits for any more may still be written in it.
    private void RemoveFolder(int tries)
    {
        try
        {
            Directory.Delete(Folder, recursive: true);
        }
        catch (IOException) when (tries > 1 && Directory.Exists(Folder))
        {
            Thread.Sleep(100);
            RemoveFolder(tries - 1);
        }
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
        await SampleLooks.WriteAsync(Folder, "L-1", solved: false);
        await SampleLooks.WriteAsync(Folder, "L-2", solved: true, nightAmount: 0.8);
        SentLink sent = (await Services.Proof.MakeLink.MakeAsync(SampleLooks.Item, "L-2", 14, "the visitor centre", CancellationToken.None)).Value;
        SentLink closed = (await Services.Proof.MakeLink.MakeAsync(SampleLooks.Item, "L-1", 14, "sent by mistake", CancellationToken.None)).Value;
        await Services.Proof.RevokeLink.RevokeAsync(closed.Link.Id, CancellationToken.None);
        (OpenProof, ClosedProof) = (sent.Path, closed.Path);
        await Services.Proof.Answer.AnswerAsync(
            sent.Token, new(ProofVerdict.Change, "Ada", "The moon a little larger, please.", new(360, 224, PinView.Night)), new(1200, 800), CancellationToken.None);
        PlannedRuns planned = await Services.PlanRuns.PlanAsync(Today, CancellationToken.None);
        if (planned.Held.Count > 0)
            throw new InvalidOperationException(string.Join('\n', planned.Faults));
        await SampleLog.WriteAsync(Services);
    }
}

/// <summary>A clock that stands on the sample day at noon.</summary>
internal sealed class FixedDay : TimeProvider
{
    public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

    public override DateTimeOffset GetUtcNow() => new(SampleShop.Today, new(12, 0), TimeSpan.Zero);
}
