using Laydown.Measures;
using Laydown.Shop.Artwork;
using Laydown.Shop.Run;

namespace Laydown.Edges.Tests.PressFiles;

/// <summary>Stands in for rendering: plates painted by a function of plate, column and row.</summary>
internal sealed class Painter(string folder, Func<string, string, int, int, int, int, byte> paint, IReadOnlyList<string>? spots = null) : IPageRenderer
{
    /// <summary>Called with the number of each request before it is answered.</summary>
    public Action<int> Before { get; init; } = _ => { };

    public Func<RenderRequest, IReadOnlyList<InputFault>> Refuse { get; init; } = _ => [];

    public List<RenderRequest> Requests { get; } = [];

    public Task<Reading<RenderedPage>> RenderAsync(RenderRequest request, CancellationToken cancellation)
    {
        Requests.Add(request);
        Before(Requests.Count);
        cancellation.ThrowIfCancellationRequested();
        if (Refuse(request) is { Count: > 0 } faults)
            return Task.FromResult(Reading.Refused<RenderedPage>(faults));
        int width = Math.Max(1, (int)Math.Round(request.Printed.WidthMm * request.Ppi / 25.4, MidpointRounding.AwayFromZero));
        int height = Math.Max(1, (int)Math.Round(request.Printed.HeightMm * request.Ppi / 25.4, MidpointRounding.AwayFromZero));
        string[] plates = ["Cyan", "Magenta", "Yellow", "Black", .. spots ?? []];
        string path = Path.Combine(folder, Invariant($"page-{Requests.Count}.raw"));
        using (FileStream raw = File.Create(path))
        {
            byte[] line = new byte[width];
            foreach (string plate in plates)
            {
                for (int y = 0; y < height; y++)
                {
                    for (int x = 0; x < width; x++)
                        line[x] = paint(Path.GetFileNameWithoutExtension(request.ArtworkPath) + "#" + request.Page, plate, x, y, width, height);
                    raw.Write(line);
                }
            }
        }

        return Task.FromResult(Reading.Of(new RenderedPage(width, height, plates, path)));
    }

    public Task<Reading<SizeMm>> PreviewAsync(string artworkPath, int page, int maxSidePx, string pngPath, CancellationToken cancellation) =>
        throw new NotSupportedException("Press files need no preview of a page.");

    /// <summary>Speckle without order: the same for the same place and seed.</summary>
    public static byte Noise(string seed, string plate, int x, int y)
    {
        uint h = 2166136261;
        foreach (char c in seed + plate)
            h = (h ^ c) * 16777619;
        h = ((h ^ (uint)x) * 16777619 ^ (uint)y) * 16777619;
        h ^= h >> 15;
        h *= 2246822519;
        return (byte)(h >> 24);
    }
}

/// <summary>Papers that say only their run.</summary>
internal sealed class PlainPapers : IRunDocuments
{
    public byte[] HangingPdf(RunContext context, string itemId, Laydown.Layout.Panels.PanelPlan plan) => [];

    public string SetUpHtml(RunContext context) => Invariant($"<!doctype html><title>{context.Run.Id}</title>");

    public byte[] SetUpPdf(RunContext context) => "%PDF-1.4"u8.ToArray();

    public byte[] QuotePdf(Quote quote) => throw new NotSupportedException("No quote is asked for here.");
}

/// <summary>Collects what is told, at once and in order.</summary>
internal sealed class Listener(Action<MakeProgress>? also = null) : IProgress<MakeProgress>
{
    public List<MakeProgress> Told { get; } = [];

    public void Report(MakeProgress value)
    {
        Told.Add(value);
        also?.Invoke(value);
    }
}
