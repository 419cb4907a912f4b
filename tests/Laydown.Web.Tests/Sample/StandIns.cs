using System.Security.Cryptography;
using System.Text;
using Laydown.Artwork.Pages;
using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Plan.Runs;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Press.Stacks;
using Laydown.Shop.Artwork;
using Laydown.Shop.Colour;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Web.Tests.Sample;

/// <summary>Stands in for the rasteriser: draws each page as a small flat picture.</summary>
internal sealed class FlatPages : IPageRenderer
{
    public Task<Reading<RenderedPage>> RenderAsync(RenderRequest request, CancellationToken cancellation) =>
        Task.FromResult(Reading.Refused<RenderedPage>(new InputFault(request.ArtworkPath, request.Page, "page", "no plates here", "a rasteriser")));

    public async Task<Reading<SizeMm>> PreviewAsync(string artworkPath, int page, int maxSidePx, string pngPath, CancellationToken cancellation)
    {
        await File.WriteAllBytesAsync(pngPath, SamplePicture.Png(60, 30, page), cancellation);
        return Reading.Of(new SizeMm(600, 300));
    }
}

/// <summary>Stands in for the readers: sample shops hold no real file.</summary>
internal sealed class NoFiles : IArtworkReader, IOrderReader
{
    public Task<Reading<ArtworkFile>> ReadAsync(string path, CancellationToken cancellation) =>
        Task.FromResult(Reading.Refused<ArtworkFile>(new InputFault(Path.GetFileName(path), null, "file", "nothing", "a file")));

    public Reading<Order> Read(string path) => Reading.Refused<Order>(new InputFault("order.json", null, "/", "nothing readable", "an order"));
}

/// <summary>Stands in for the measuring of ink: the same laydown everywhere, more of each ink than of the one before.</summary>
internal sealed class EvenInk : IInkMeasure
{
    public Task<Reading<IReadOnlyList<LayerInk>>> MeasureAsync(
        ItemRecord item, PrintCondition condition, InkSet inkSet, string profilePath, CancellationToken cancellation) =>
        Task.FromResult(Reading.Of<IReadOnlyList<LayerInk>>([.. item.Stack!.Layers.SelectMany((layer, n) => LayerRoles.Of(layer.Group)
            .Where(role => inkSet.Find(role) is not null)
            .Select((role, k) => layer.Group == InkGroup.Colour ? new LayerInk(n, role, 0.08 + (0.05 * k), 2.2) : new LayerInk(n, role, 0.9, 1)))]));
}

/// <summary>Papers with a line of text.</summary>
internal sealed class PlainPapers : IRunDocuments
{
    public byte[] HangingPdf(RunContext context, string itemId, Laydown.Layout.Panels.PanelPlan plan) => [];

    public string SetUpHtml(RunContext context) => "<!DOCTYPE html><html lang='en'><title>Set-up</title><p>Set-up";

    public byte[] SetUpPdf(RunContext context) => Encoding.ASCII.GetBytes("%PDF-1.7\n%set-up\n");

    public byte[] QuotePdf(Quote quote) => Encoding.ASCII.GetBytes(Invariant($"%PDF-1.7\n%quote {quote.Order.Id} {quote.Gross}\n"));
}

/// <summary>
/// Stands in for the maker of press files: writes small real files step by step. A test holds it at half-way with <see cref="Hold"/>,
/// so that what a page shows meanwhile does not depend on speed.
/// </summary>
internal sealed class StepwiseFiles : IPressFiles
{
    private TaskCompletionSource gate = Opened();

    public void Hold() => gate = new(TaskCreationOptions.RunContinuationsAsynchronously);

    public void Release() => gate.TrySetResult();

    public async Task<Reading<IReadOnlyList<ManifestEntry>>> MakeAsync(
        RunContext context, string runsFolder, IProgress<MakeProgress> progress, CancellationToken cancellation)
    {
        string folder = Path.Combine(runsFolder, context.Run.Id);
        (string Name, string What, byte[] Bytes)[] files =
        [
            ("sheet-01-preview.png", "preview", SamplePicture.Png(240, 120, 1)),
            ("sheet-01-lit.png", "lit-preview", SamplePicture.Png(240, 120, 2)),
            ("sheet-01-cut.svg", "cut", Encoding.UTF8.GetBytes("<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 10 10'><rect width='10' height='10' fill='none' stroke='black'/></svg>")),
            ("sheet-01-layer-1-colour.tif", "contone", new byte[40_000]),
            ("set-up.html", "set-up", Encoding.UTF8.GetBytes(new PlainPapers().SetUpHtml(context))),
            ("set-up.pdf", "set-up", new PlainPapers().SetUpPdf(context)),
        ];
        List<ManifestEntry> made = [];
        string beside = folder + ".part";
        try
        {
            Directory.CreateDirectory(beside);
            foreach (var (name, what, bytes) in files)
            {
                await File.WriteAllBytesAsync(Path.Combine(beside, name), bytes, cancellation);
                made.Add(new(name, what, bytes.Length, Convert.ToHexStringLower(SHA256.HashData(bytes))));
                progress.Report(new(context.Run.Id, Invariant($"wrote {name}"), 100.0 * made.Count / (files.Length + 1)));
                if (made.Count == 3)
                    await gate.Task.WaitAsync(cancellation);
            }

            if (Directory.Exists(folder))
                Directory.Delete(folder, recursive: true);
            Directory.Move(beside, folder);
            return Reading.Of<IReadOnlyList<ManifestEntry>>(made);
        }
        finally
        {
            if (Directory.Exists(beside))
                Directory.Delete(beside, recursive: true);
        }
    }

    private static TaskCompletionSource Opened()
    {
        TaskCompletionSource open = new();
        open.SetResult();
        return open;
    }
}
