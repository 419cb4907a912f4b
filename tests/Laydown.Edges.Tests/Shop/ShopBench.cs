using Laydown.Artwork.Pages;
using Laydown.Demo.Descriptions;
using Laydown.Edges.Tests.Store;
using Laydown.Formats.Json;
using Laydown.Intake.Orders;
using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Press.Stacks;
using Laydown.Shop;
using Laydown.Shop.Artwork;
using Laydown.Shop.Colour;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;
using Microsoft.Extensions.Time.Testing;

namespace Laydown.Edges.Tests.UseCases;

/// <summary>A small shop in a folder of its own: the demo's catalogue, a store in memory, order files written by the test.</summary>
internal sealed class ShopBench : IDisposable
{
    private readonly TempFolder temp = new();

    public ShopBench()
    {
        Folder = new(temp.Path);
        DemoCatalogue.Write(Folder.Catalogue, CancellationToken.None);
        // The fakes separate nothing, so any file will do where a profile is wanted.
        string profiles = Directory.CreateDirectory(Path.Combine(Folder.Catalogue, "profiles")).FullName;
        foreach (string profile in DemoCatalogue.Profiles)
            File.WriteAllText(Path.Combine(profiles, profile), "a profile");
        Catalogue = new CatalogueReader().Read(Folder.Catalogue).Value;
        Directory.CreateDirectory(Folder.Orders);
        Clock.SetLocalTimeZone(TimeZoneInfo.Utc);
    }

    public static DateOnly Today { get; } = new(2026, 11, 25);

    public FakeTimeProvider Clock { get; } = new(new DateTimeOffset(2026, 11, 25, 9, 0, 0, TimeSpan.Zero));

    public ShopFolder Folder { get; }

    public Catalogue Catalogue { get; }

    public MemoryStore Store { get; } = new();

    public ProgressBoard Board { get; } = new();

    public static Item Item(string id, string artwork = "board.pdf", string stockId = "fluted-5") => new(
        id, "A board", artwork, 600, 400, 3, 4, stockId, new BuildWish(false, false, false, null, null, 0, 0, false),
        [new(FinishingKind.CutSquare, 1)], new DateOnly(2026, 12, 4), 1.5, 1, null);

    public TakeOrders TakeOrders() => new(Folder, Catalogue, new OrderReader(), Store, Clock);

    /// <summary>Puts an order file and, for each item, a file of artwork into the orders' folder.</summary>
    public string Put(string folderName, Order order)
    {
        string folder = Directory.CreateDirectory(Path.Combine(Folder.Orders, folderName)).FullName;
        File.WriteAllBytes(Path.Combine(folder, "order.json"), LaydownJson.ToBytes(order));
        foreach (Item item in order.Items.Where(i => !i.Artwork.Contains('/', StringComparison.Ordinal)))
            File.WriteAllText(Path.Combine(folder, item.Artwork), Invariant($"artwork of {item.Id}"));
        return folder;
    }

    public void Dispose() => temp.Dispose();

    /// <summary>Takes every file as the sample artwork, with the real SHA-256.</summary>
    public sealed class FakeReader(Func<string, InputFault?>? fault = null) : IArtworkReader
    {
        public List<string> Read { get; } = [];

        public async Task<Reading<ArtworkFile>> ReadAsync(string path, CancellationToken cancellation)
        {
            string name = Path.GetFileName(path);
            Read.Add(name);
            if (fault?.Invoke(name) is { } found)
                return Reading.Refused<ArtworkFile>(found);
            byte[] sha = System.Security.Cryptography.SHA256.HashData(await File.ReadAllBytesAsync(path, cancellation));
            ArtworkPage page = Samples.Artwork().Pages[0] with
            {
                MediaMm = new(606, 406),
                TrimMm = new(3, 3, 600, 400),
                BleedMm = new(0, 0, 606, 406),
                Images = [],
                Separations = [],
                SmallestTexts = [],
                ThinnestLines = [],
                CutPaths = [],
                Codes = [],
                TotalInkPercent = null,
                TotalInkPlace = null,
                UserUnit = 1,
                HiddenLayers = [],
                Transparency = false,
            };
            return Reading.Of(new ArtworkFile(name, ArtworkKind.Pdf, 10, Convert.ToHexStringLower(sha), "1.6", null, [page]));
        }
    }

    /// <summary>Writes a small file for each picture.</summary>
    public sealed class FakeRenderer : IPageRenderer
    {
        public Task<Reading<RenderedPage>> RenderAsync(RenderRequest request, CancellationToken cancellation) => throw new NotSupportedException();

        public async Task<Reading<SizeMm>> PreviewAsync(string artworkPath, int page, int maxSidePx, string pngPath, CancellationToken cancellation)
        {
            await File.WriteAllTextAsync(pngPath, "a picture", cancellation);
            return Reading.Of(new SizeMm(600, 400));
        }
    }

    /// <summary>Half laydown of each process ink in each layer.</summary>
    public sealed class FakeMeasure(Func<string, InputFault?>? fault = null) : IInkMeasure
    {
        public Task<Reading<IReadOnlyList<LayerInk>>> MeasureAsync(
            ItemRecord item, PrintCondition condition, InkSet inkSet, string profilePath, CancellationToken cancellation) =>
            Task.FromResult(fault?.Invoke(item.Item.Id) is { } found
                ? Reading.Refused<IReadOnlyList<LayerInk>>(found)
                : Reading.Of<IReadOnlyList<LayerInk>>([.. (item.Stack ?? throw new InvalidOperationException("No stack.")).Layers.SelectMany(Inks)]));

        private static IEnumerable<LayerInk> Inks(Layer layer, int index) => layer.Group == InkGroup.Colour
            ? [new(index, InkRole.Cyan, 0.25, 1.5), new(index, InkRole.Black, 0.1, 1.5)]
            : [new(index, InkRole.White, 1, 1)];
    }

    /// <summary>Makes a folder with one file, or what the test asks for instead.</summary>
    public sealed class FakeFiles(Func<RunContext, Reading<IReadOnlyList<ManifestEntry>>?>? instead = null) : IPressFiles
    {
        public int Made { get; private set; }

        public async Task<Reading<IReadOnlyList<ManifestEntry>>> MakeAsync(
            RunContext context, string runsFolder, IProgress<MakeProgress> progress, CancellationToken cancellation)
        {
            progress.Report(new(context.Run.Id, "separating", 40));
            if (instead?.Invoke(context) is { } other)
                return other;
            cancellation.ThrowIfCancellationRequested();
            Made++;
            string folder = Directory.CreateDirectory(Path.Combine(runsFolder, context.Run.Id)).FullName;
            byte[] bytes = System.Text.Encoding.UTF8.GetBytes(context.Run.Id);
            await File.WriteAllBytesAsync(Path.Combine(folder, "run.json"), bytes, cancellation);
            string sha = Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(bytes));
            return Reading.Of<IReadOnlyList<ManifestEntry>>([new("run.json", "run", bytes.Length, sha)]);
        }
    }

    /// <summary>Papers of one line.</summary>
    public sealed class FakeDocuments : IRunDocuments
    {
        public byte[] HangingPdf(RunContext context, string itemId, Laydown.Layout.Panels.PanelPlan plan) => [];

        public string SetUpHtml(RunContext context) => context.Run.Id;

        public byte[] SetUpPdf(RunContext context) => [1];

        public byte[] QuotePdf(Quote quote) => System.Text.Encoding.UTF8.GetBytes(quote.Order.Id);
    }
}
