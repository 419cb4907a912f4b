using Laydown.Measures;
using Laydown.Optics.Looks;
using Laydown.Optics.Panels;
using Laydown.Press.Stacks;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Layers;

/// <summary>Makes a look from two pictures: one for the day, one for the lamp.</summary>
/// <param name="catalogue">What the shop has.</param>
/// <param name="store">Items.</param>
/// <param name="shelf">The looks.</param>
/// <param name="pairs">Reads pictures.</param>
/// <param name="pictures">Writes pictures.</param>
/// <param name="clock">Tells the time.</param>
public sealed class SolvePanel(
    Catalogue catalogue, IShopStore store, LookShelf shelf, IPairPictures pairs, ILookPictures pictures, TimeProvider clock)
{
    // Shares of the whole at which each part ends, from timings of the demo's panel.
    private const double PairEnd = 0.2, PlanEnd = 0.35, BandsEnd = 0.8, JudgeEnd = 0.95;

    private const int SmallPixels = 250_000;
    private const int LitSpots = 200;

    /// <summary>Pixels of a band of rows, at least 1; the result does not hang on it.</summary>
    public int BandPixels { get; init; } = 1 << 15;

    /// <summary>Most threads, at least 1; the result does not hang on it.</summary>
    public int Threads { get; init; } = Environment.ProcessorCount;

    /// <summary>Solves, and keeps the look; on failure or cancel nothing of it is left.</summary>
    /// <param name="request">What is asked for.</param>
    /// <param name="progress">Told the share that is done, 0 to 1.</param>
    /// <param name="cancellation">Stops it within a band of rows.</param>
    /// <returns>The look and where it lies, or each reason there is none.</returns>
    /// <exception cref="ArgumentException">Neither or both of item and piece are named.</exception>
    public async Task<Reading<StoredLook>> SolveAsync(PanelRequest request, IProgress<double>? progress, CancellationToken cancellation)
    {
        if ((request.ItemId is null) == (request.Piece is null) || (request.Piece is not null && (request.OutFolder is null || request.DayPath is null || request.NightPath is null)))
            throw new ArgumentException("Panel: wanted an item, or a piece with two files and a folder.", nameof(request));
        Bounds.Within(request.Ppi, 10, 600);
        ItemRecord? item = request.ItemId is null ? null : await store.ItemAsync(request.ItemId, cancellation);
        if (request.ItemId is not null && item is null)
            return Refused(Invariant($"item {request.ItemId}"), "item", Invariant($"no item '{request.ItemId}'"), "an item of this shop");
        Reading<PanelJob> job = PanelJob.Of(request, item, catalogue);
        if (!job.IsTaken)
            return Reading.Refused<StoredLook>(job.Faults);
        if (OutFault(request) is { } fault)
            return Reading.Refused<StoredLook>(fault);
        try
        {
            return await SolveAsync(request, item, job.Value, progress, cancellation);
        }
        catch (Exception e) when (e is IOException or InvalidDataException or UnauthorizedAccessException)
        {
            return Refused(item is null ? "panel" : Invariant($"item {item.Item.Id}"), "disk", e.Message, "room for a look and leave to write it");
        }
    }

    private async Task<Reading<StoredLook>> SolveAsync(
        PanelRequest request, ItemRecord? item, PanelJob job, IProgress<double>? progress, CancellationToken cancellation)
    {
        PairRequest wanted = PairOf(request, item, job);
        Reading<PairFile> read = await pairs.ReadAsync(wanted, Part(progress, 0, PairEnd), cancellation);
        if (!read.IsTaken)
            return Reading.Refused<StoredLook>(read.Faults);
        using PairFile pair = read.Value;
        using LookDraft draft = item is null ? new(Path.GetDirectoryName(request.OutFolder!)!) : shelf.Begin(item.Item.Id);
        LookRecord record = await Task.Run(() => Computed(request, item, job, wanted.Wish, pair, draft, progress, cancellation), cancellation);
        Reading<LookOptics> optics = new LookLights(catalogue).Of(record);
        if (!optics.IsTaken)
            return Reading.Refused<StoredLook>(optics.Faults);
        Reading<int> proofs = await LookProofs.WriteAsync(record, optics.Value, draft, pictures, request.ProofProfile, cancellation);
        if (!proofs.IsTaken)
            return Reading.Refused<StoredLook>(proofs.Faults);
        record = record with { Files = await draft.FilesAsync(cancellation) };
        LookRecord kept = item is null
            ? await draft.PublishAsAsync(record, Path.GetFileName(request.OutFolder!), cancellation)
            : await draft.PublishAsync(record, cancellation);
        progress?.Report(1);
        return Reading.Of(new StoredLook(kept, item is null ? request.OutFolder! : shelf.FolderOf(kept.ItemId, kept.LookId)));
    }

    private LookRecord Computed(
        PanelRequest request, ItemRecord? item, PanelJob job, PairWish pairWish, PairFile pair, LookDraft draft, IProgress<double>? progress,
        CancellationToken cancellation)
    {
        // What holds for the whole is settled on a small pair; then every pixel is looked up, and what came out is judged on the small pair again.
        (int width, int height, float[] pixels) = pair.Reduced(SmallPixels, cancellation);
        PairPicture small = new(width, height, pixels);
        double perMm = width / job.Printed.WidthMm;
        PanelPlan plan = PanelPlanner.Plan(job.Stack, job.Day, job.Night, job.PanelWish(), small, perMm, Part(progress, PairEnd, PlanEnd), cancellation);
        new PanelBands(plan, pair, job.PlaneOf) { BandPixels = BandPixels, Threads = Threads }.Write(
            draft.File(LookRecord.PlanesFile), draft.File(LookRecord.WishFile), Part(progress, PlanEnd, BandsEnd), cancellation);
        (PanelReport report, PanelMaps maps) = PanelJudge.Judge(plan, small, perMm, cancellation);
        progress?.Report(JudgeEnd);
        foreach ((string name, byte[] png) in Maps(maps))
            File.WriteAllBytes(draft.File(name), png);
        LookRecord record = Record(request, item, job, pairWish, pair);
        return record with
        {
            Aim = PanelReports.Aim(plan, report, job.Wish),
            Report = PanelReports.Report(report, job.PlaneOf, Lit(record, job, draft, cancellation), record.Generic),
        };
    }

    private LookRecord Record(PanelRequest request, ItemRecord? item, PanelJob job, PairWish pairWish, PairFile pair)
    {
        Laydown.Press.Inks.InkOptics? optics = catalogue.OpticsOf(job.Press.Condition);
        return new(
            item?.Item.Id ?? "", "", clock.GetUtcNow(), LookHow.Solved, pair.Width, pair.Height, request.Ppi, job.Printed, job.BleedMm, job.Layers,
            job.Press.Stock.Id, job.Press.InkSet.Id, job.Press.Condition.Id, LookLights.IsGeneric(job.Layers, job.Press.InkSet, optics),
            SheetFace.First, LookScene.Of(job.Day), LookScene.Of(job.Night),
            request.DayPath is null || request.NightPath is null ? item?.Artwork?.Sha256 : null, job.Wish, pairWish, null, null,
            [.. pair.Findings, .. StackLights.Missing(job.Layers.SelectMany(l => l.Inks).Select(i => i.Role), job.Press.InkSet, optics)], [], request.Note);
    }

    private IEnumerable<(string Name, byte[] Png)> Maps(PanelMaps maps)
    {
        foreach ((string name, string title, float[] values) in new[]
        {
            ("map-day.png", "By day: difference to what was aimed at, dE00", maps.Day), ("map-night.png", "Lit: difference to what was aimed at, dE00", maps.Night),
            ("map-ghost.png", "What of the night picture is seen by day, weighted dE00", maps.Ghost),
        })
            yield return (name, pictures.Map(PanelMapColours.Of(maps.Width, maps.Height, values), title, PanelMapColours.DifferenceKeys));
        yield return ("map-reason.png", pictures.Map(PanelMapColours.Of(maps.Width, maps.Height, maps.Reason), "Why a place cannot be reached", PanelMapColours.ReasonKeys));
    }

    private float[] Lit(LookRecord record, PanelJob job, LookDraft draft, CancellationToken cancellation)
    {
        LookOptics optics = LookLights.Of(
            record.Layers, job.Press.Stock, job.Press.InkSet, catalogue.OpticsOf(job.Press.Condition), record.ViewedFrom, record.Day, record.Night).Value;
        StackNumbers numbers = new(optics.Sheet, optics.Layers, optics.NightScene, optics.ViewedFrom);
        (int width, int height) = LookProofs.Size(record.WidthPx, record.HeightPx, LitSpots);
        using LookPlanes planes = new(record, draft.FolderPath);
        byte[] small = planes.Reduced(width, height, cancellation);
        float[] lit = new float[width * height];
        byte[] line = new byte[planes.Count * width];
        for (int row = 0; row < height; row++)
        {
            for (int plane = 0; plane < planes.Count; plane++)
                small.AsSpan(((plane * height) + row) * width, width).CopyTo(line.AsSpan(plane * width));
            numbers.Row(SpotMap.LitCdPerM2, line, width, lit.AsSpan(row * width, width));
        }

        return lit;
    }

    private PairRequest PairOf(PanelRequest request, ItemRecord? item, PanelJob job)
    {
        string day = request.DayPath ?? item!.ArtworkPath, night = request.NightPath ?? item!.ArtworkPath;

        // Pages of an item's artwork are named by the shop itself, so a file of several images holds no doubt.
        PairWish asked = request.Pair;
        PairWish wish = asked with
        {
            Day = asked.Day with { File = Path.GetFileName(day), Frame = request.DayPath is null ? asked.Day.Frame ?? asked.Day.Page : asked.Day.Frame },
            Night = asked.Night with { File = Path.GetFileName(night), Frame = request.NightPath is null ? asked.Night.Frame ?? asked.Night.Page : asked.Night.Frame },
        };
        return new(day, night, wish, job.Printed, job.BleedMm, request.Ppi, job.ProfilePath(catalogue));
    }

    private static InputFault? OutFault(PanelRequest request)
    {
        if (request.Piece is null)
            return null;
        string name = Path.GetFileName(request.OutFolder!);
        return !LookFolders.IsPlain(name) || Path.GetDirectoryName(request.OutFolder!) is null
            ? new(name, null, "out", Invariant($"'{request.OutFolder}'"), "a folder with a plain name")
            : Directory.Exists(request.OutFolder) || File.Exists(request.OutFolder)
                ? new(name, null, "out", "something of that name already", "a name that is free")
                : null;
    }

    private static PartOf? Part(IProgress<double>? progress, double from, double to) => progress is null ? null : new(progress, from, to);

    private static Reading<StoredLook> Refused(string file, string field, string found, string wanted) =>
        Reading.Refused<StoredLook>(new InputFault(file, null, field, found, wanted));
}
