using System.Diagnostics;
using System.Security.Cryptography;
using System.Text;
using Laydown.Artwork.Pages;
using Laydown.Cli;
using Laydown.Demo;
using Laydown.Measures;
using Laydown.Shop;
using Laydown.Shop.Layers;
using Laydown.Shop.Proof;

namespace Laydown.Bench;

/// <summary>Solves pairs of pictures from files to finished folders, on the demo's clear acrylic.</summary>
/// <remarks>
/// <c>--instances</c> names a folder of pairs <c>NAME.day.*</c> and <c>NAME.night.*</c>: each day picture is one pixel for each of its own, at 150 ppi. Without it
/// pairs of the demo's own: one at 1.5, 6 and 24 million pixels, the two hard ones at 1.5. Pictures are made before the clock runs.
/// </remarks>
internal sealed class DayNight : IDisposable
{
    private const string Stock = "acrylic-clear-5", Condition = "long-belt-clear-sheets";
    private const double Ppi = 150;

    private readonly string folder = Directory.CreateTempSubdirectory("laydown-bench-").FullName;
    private readonly List<PanelRow> rows = [];
    private readonly List<PanelRefusal> refused = [];
    private readonly CancellationToken cancellation;
    private ShopServices shop = null!;

    private DayNight(CancellationToken cancellation) => this.cancellation = cancellation;

    /// <summary>Runs all.</summary>
    public static async Task<PanelResult> RunAsync(BenchArguments arguments, CancellationToken cancellation)
    {
        using DayNight bench = new(cancellation);
        DemoWorld.Write(bench.folder, DemoWorld.Day, cancellation);
        bench.shop = (await Wiring.OpenAsync(bench.folder, TimeProvider.System, cancellation)).Value;
        using (bench.shop.MakeRun)
            return arguments.Instances is { } instances ? await bench.FolderAsync(instances) : await bench.OwnAsync();
    }

    /// <inheritdoc/>
    public void Dispose() => Directory.Delete(folder, recursive: true);

    private async Task<PanelResult> FolderAsync(string instances)
    {
        foreach (string day in Directory.EnumerateFiles(instances, "*.day.*").Order(StringComparer.Ordinal))
        {
            string name = Path.GetFileName(day)[..Path.GetFileName(day).IndexOf(".day.", StringComparison.Ordinal)];
            string? night = Directory.EnumerateFiles(instances, name + ".night.*").Order(StringComparer.Ordinal).FirstOrDefault();
            Reading<SizeMm> size = night is null
                ? Reading.Refused<SizeMm>(new InputFault(Path.GetFileName(day), null, "pair", Invariant($"no {name}.night.*"), "the other picture of the pair"))
                : await SizeAsync(day);
            if (night is null || !size.IsTaken)
                refused.Add(new(name, [.. size.Faults.Select(f => f.ToString())]));
            else
                await SolveAsync(name, day, night, size.Value.WidthMm, size.Value.HeightMm);
        }

        return Result(null, null, null, null);
    }

    private async Task<Reading<SizeMm>> SizeAsync(string path)
    {
        if (path.EndsWith(".webp", StringComparison.OrdinalIgnoreCase))
        {
            using NetVips.Image? image = Opened(path);
            if (image is null)
                return Reading.Refused<SizeMm>(new InputFault(Path.GetFileName(path), null, "image data", "damaged or cut short", "a whole picture"));
            return Reading.Of(new SizeMm(image.Width * 25.4 / Ppi, image.Height * 25.4 / Ppi));
        }

        Reading<ArtworkFile> file = await Wiring.ArtworkReader(Path.Combine(folder, "scratch")).ReadAsync(path, cancellation);
        return file.Then(f => Reading.Of(f.Pages[0] is { PixelWidth: > 0 } page ? new SizeMm(page.PixelWidth * 25.4 / Ppi, page.PixelHeight * 25.4 / Ppi) : f.Pages[0].TrimMm.Size));
    }

    private static NetVips.Image? Opened(string path)
    {
        try
        {
            return NetVips.Image.NewFromFile(path);
        }
        catch (NetVips.VipsException)
        {
            return null;
        }
    }

    private async Task<PanelResult> OwnAsync()
    {
        foreach (int width in (int[])[1500, 3000, 6000])
            await OwnAsync(DemoPairs.Marsh, width);
        await OwnAsync(DemoPairs.Swapped, 1500);
        await OwnAsync(DemoPairs.Crossed, 1500);
        double exponent = Math.Log(rows[2].CpuSeconds / rows[1].CpuSeconds) / Math.Log(rows[2].Megapixels / rows[1].Megapixels);
        (double mean, double p99) = TableError.Of(shop.Catalogue, Stock, Condition, await PixelsAsync(), cancellation);
        return Result(exponent, mean, p99, await PreviewAsync());
    }

    // The demo's own panel, as a person drags its weight and its white.
    private async Task<double> PreviewAsync()
    {
        await shop.TakeOrders.TakeAsync(cancellation);
        await shop.CheckItems.CheckAsync(cancellation);
        var request = PanelRequest.OfItem("TW-1043-1");
        PreviewWish first = new(1, 1, 0, 0.7);
        double longest = 0;
        foreach (PreviewWish wish in (PreviewWish[])[first, first with { NightWeight = 1.5 }, first with { WhiteStrength = 0.8 }, first with { NightWeight = 0.4, WhiteStrength = 0.6 }])
        {
            double took = (await shop.Proof.Preview.DrawAsync(request, wish, 1_000_000, cancellation)).Value.Size.Milliseconds;
            longest = wish == first ? 0 : Math.Max(longest, took);
        }

        return longest;
    }

    private async Task<float[]> PixelsAsync()
    {
        (string day, string night) = DemoPairs.Write(folder, DemoPairs.Crossed, 300);
        PairRequest request = new(
            day, night, new(new("", 1, null), new("", 1, null), PairPlacing.Careful, PairPlacing.Careful, []), new(300, 200), 0, 25.4,
            Path.Combine(shop.Catalogue.Folder, "profiles", "hybrid-boards.icc"));
        using PairFile pair = (await Wiring.PairPictures(Path.Combine(folder, "scratch")).ReadAsync(request, null, cancellation)).Value;
        return pair.Reduced(60_000, cancellation).Pixels;
    }

    private async Task OwnAsync(string name, int widthPx)
    {
        (string day, string night) = DemoPairs.Write(folder, name, widthPx);
        await SolveAsync(name, day, night, widthPx * 25.4 / Ppi, widthPx * 2 / 3 * 25.4 / Ppi);
        File.Delete(day);
        File.Delete(night);
    }

    private async Task SolveAsync(string name, string day, string night, double widthMm, double heightMm)
    {
        string place = Path.Combine(folder, Invariant($"look-{rows.Count}"));
        PanelRequest request = new(
            null, new(Stock, Condition, widthMm, heightMm, 0, true, 100), day, night,
            new(new("", 1, null), new("", 1, null), PairPlacing.Careful, PairPlacing.Careful, []), null, Ppi, LookWish.Usual, null, null, place, null, null);
        GC.Collect();
        ProcessMeter.ResetPeak();
        double cpu = ProcessMeter.CpuSeconds();
        long start = Stopwatch.GetTimestamp();
        Reading<StoredLook> solved = await shop.Layers.SolvePanel.SolveAsync(request, null, cancellation);
        double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
        if (!solved.IsTaken)
        {
            refused.Add(new(name, [.. solved.Faults.Select(f => f.ToString())]));
            return;
        }

        LookRecord record = solved.Value.Record;
        (LookReport report, LookAim aim) = (record.Report!, record.Aim!);
        rows.Add(new(
            name, record.WidthPx * (double)record.HeightPx / 1e6, report.Day, report.Night, report.DayToPicture, report.NightToPicture, report.GhostMean,
            report.GhostP95, report.LeakP95, report.NightLightLostPercent, report.UnreachablePercent, aim.LiftPercent, aim.NightExposure, seconds,
            ProcessMeter.CpuSeconds() - cpu, ProcessMeter.PeakMb(), record.PlanesSha256 ?? "", report.Reasons));
        Directory.Delete(place, recursive: true);
    }

    private PanelResult Result(double? exponent, double? mean, double? p99, double? preview) => new(
        "daynight", rows, refused, exponent, mean, p99, preview, rows.Sum(r => r.CpuSeconds), rows.Select(r => r.PeakMb).DefaultIfEmpty(0).Max(),
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', rows.Select(r => r.Checksum))))));
}
