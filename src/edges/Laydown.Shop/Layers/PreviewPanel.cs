using System.Diagnostics;
using System.Text.Json;
using Laydown.Measures;
using Laydown.Optics.Panels;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Layers;

/// <summary>Shows how an item's panel would look while weight and white are dragged: the pair is read once and kept small, tables are kept for each setting.</summary>
/// <remarks>
/// Contrast is not kept where a picture cannot be reached, and the white has one strength: what is solved afterwards is a little better. Keeps at most
/// <see cref="MostPairs"/> pairs and <see cref="MostTables"/> settings; the ones not asked for longest go first.
/// </remarks>
/// <param name="catalogue">What the shop has.</param>
/// <param name="store">Items.</param>
/// <param name="pairs">Reads pictures.</param>
public sealed class PreviewPanel(Catalogue catalogue, IShopStore store, IPairPictures pairs) : IDisposable
{
    /// <summary>Most pairs kept; each takes 24 bytes a pixel.</summary>
    public const int MostPairs = 3;

    /// <summary>Most settings whose tables are kept.</summary>
    public const int MostTables = 24;

    private const int AimPixels = 40_000;
    private const int BandPixels = 1 << 14;

    private readonly SemaphoreSlim oneAtATime = new(1, 1);
    private readonly List<(string Key, Kept Pair)> known = [];
    private readonly List<(string Key, Laydown.Optics.Panels.PanelPreview Preview)> tables = [];

    /// <summary>The panel as it would look.</summary>
    /// <param name="request">What is asked for.</param>
    /// <param name="cancellation">Stops it within a band of rows.</param>
    /// <returns>The panel as light, or why there is none.</returns>
    public async Task<Reading<PreviewedPanel>> PreviewAsync(PreviewRequest request, CancellationToken cancellation)
    {
        Bounds.Within(request.MostPixels, 1000, 1_000_000);
        ItemRecord? item = await store.ItemAsync(request.ItemId, cancellation);
        if (item?.Artwork is null)
        {
            return Reading.Refused<PreviewedPanel>(new InputFault(
                Invariant($"item {request.ItemId}"), null, "item", "none whose artwork was measured", "an item of this shop that was checked"));
        }

        await oneAtATime.WaitAsync(cancellation);
        try
        {
            Reading<Kept> kept = await PairAsync(request, item, cancellation);
            return kept.IsTaken
                ? await Task.Run(() => Shown(kept.Value, request, cancellation), cancellation)
                : Reading.Refused<PreviewedPanel>(kept.Faults);
        }
        finally
        {
            oneAtATime.Release();
        }
    }

    /// <inheritdoc/>
    public void Dispose() => oneAtATime.Dispose();

    private async Task<Reading<Kept>> PairAsync(PreviewRequest request, ItemRecord item, CancellationToken cancellation)
    {
        string key = JsonSerializer.Serialize(
            new { item.Item, item.Artwork!.Sha256, request.DayPlacing, request.NightPlacing, request.Points, request.MostPixels }, ShopJson.Compact);
        int at = known.FindIndex(k => k.Key == key);
        if (at >= 0)
        {
            (string, Kept) found = known[at];
            known.RemoveAt(at);
            known.Add(found);
            return Reading.Of(found.Item2);
        }

        PanelRequest asked = PanelRequest.OfItem(item.Item.Id) with { Wish = LookWish.Usual with { NightWeight = 1 } };
        Reading<PanelJob> job = PanelJob.Of(asked, item, catalogue);
        if (!job.IsTaken)
            return Reading.Refused<Kept>(job.Faults);

        // Just as many pixels as are wanted: nothing larger is read only to be thrown away.
        SizeMm printed = job.Value.Printed;
        double ppi = Math.Clamp(25.4 * Math.Sqrt(request.MostPixels / (printed.WidthMm * printed.HeightMm)), 1, 600);
        PairWish wish = new(new(item.Item.Artwork, 1, 1), new(item.Item.Artwork, 2, 2), request.DayPlacing, request.NightPlacing, request.Points);
        Reading<PairFile> read = await pairs.ReadAsync(
            new(item.ArtworkPath, item.ArtworkPath, wish, printed, job.Value.BleedMm, ppi, job.Value.ProfilePath(catalogue)), null, cancellation);
        if (!read.IsTaken)
            return Reading.Refused<Kept>(read.Faults);
        using PairFile pair = read.Value;
        Kept fresh = await Task.Run(() => Keep(key, job.Value, pair, request.MostPixels, cancellation), cancellation);
        known.Add((key, fresh));
        if (known.Count > MostPairs)
            known.RemoveAt(0);
        return Reading.Of(fresh);
    }

    private static Kept Keep(string key, PanelJob job, PairFile pair, int mostPixels, CancellationToken cancellation)
    {
        (int width, int height, float[] pixels) = pair.Reduced(mostPixels, cancellation);
        (int smallWidth, int smallHeight, float[] small) = pair.Reduced(AimPixels, cancellation);
        PanelWish wish = new(job.Wish.NightWeight, WhiteUse.Fixed, job.Wish.WhiteStrengths, null, null, keepContrast: false, job.Wish.ViewingDistanceMm);
        PanelPlan plan = PanelPlanner.Plan(
            job.Stack, job.Day, job.Night, wish, new(smallWidth, smallHeight, small), smallWidth / job.Printed.WidthMm, null, cancellation);
        return new(key, job, width, height, pixels, plan.Aim.LiftPercent, plan.Aim.NightExposure);
    }

    private Reading<PreviewedPanel> Shown(Kept kept, PreviewRequest request, CancellationToken cancellation)
    {
        long start = Stopwatch.GetTimestamp();
        double strength = request.WhiteStrength ?? kept.Job.Wish.WhiteStrengths[0], lift = request.LiftPercent ?? kept.LiftPercent;
        double exposure = request.NightExposure ?? kept.NightExposure;
        foreach ((string field, double value, double least, double most) in new[]
        {
            ("nightWeight", request.NightWeight, 0.01, 100), ("whiteStrength", strength, 0.01, 1), ("liftPercent", lift, 0, 60), ("nightExposure", exposure, 0.02, 1),
        })
        {
            if (!(value >= least && value <= most))
                return Reading.Refused<PreviewedPanel>(new InputFault(Invariant($"item {request.ItemId}"), null, field, Invariant($"{value}"), Invariant($"{least} to {most}")));
        }

        Laydown.Optics.Panels.PanelPreview preview = Table(kept, request.NightWeight, strength, lift, exposure);
        float[] room = new float[kept.Pixels.Length / 2], lamp = new float[kept.Pixels.Length / 2];
        int pixels = kept.Width * kept.Height, bands = (pixels + BandPixels - 1) / BandPixels;
        Parallel.For(0, bands, new ParallelOptions { CancellationToken = cancellation }, band =>
        {
            int first = band * BandPixels, count = Math.Min(BandPixels, pixels - first);
            preview.Pixels(kept.Pixels.AsSpan(6 * first, 6 * count), room.AsSpan(3 * first, 3 * count), lamp.AsSpan(3 * first, 3 * count));
        });
        return Reading.Of(new PreviewedPanel(
            kept.Width, kept.Height, room, lamp, strength, lift, exposure, Stopwatch.GetElapsedTime(start).TotalMilliseconds));
    }

    private Laydown.Optics.Panels.PanelPreview Table(Kept kept, double weight, double strength, double lift, double exposure)
    {
        string key = Invariant($"{kept.Key}|{weight:R}|{strength:R}|{lift:R}|{exposure:R}");
        int at = tables.FindIndex(t => t.Key == key);
        (string, Laydown.Optics.Panels.PanelPreview) table = at >= 0
            ? tables[at]
            : (key, new(kept.Job.Stack, kept.Job.Day, kept.Job.Night, weight, strength, lift, exposure));
        if (at >= 0)
            tables.RemoveAt(at);
        tables.Add(table);
        if (tables.Count > MostTables)
            tables.RemoveAt(0);
        return table.Item2;
    }

    private sealed record Kept(string Key, PanelJob Job, int Width, int Height, float[] Pixels, double LiftPercent, double NightExposure);
}
