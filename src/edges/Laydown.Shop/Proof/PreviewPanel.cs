using System.Diagnostics;
using Laydown.Measures;
using Laydown.Optics.Looks;
using Laydown.Optics.Panels;
using Laydown.Shop.Layers;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Proof;

/// <summary>How the pages of an item would look as a day and night panel, quickly: for dragging weight and white while looking.</summary>
/// <remarks>The pictures are read once, small, and kept for the few items that were asked for last.</remarks>
/// <param name="catalogue">What the shop has.</param>
/// <param name="store">Items.</param>
/// <param name="pairs">Reads pictures.</param>
public sealed class PreviewPanel(Catalogue catalogue, IShopStore store, IPairPictures pairs)
{
    /// <summary>Most pixels of a preview.</summary>
    public const int MostPixels = 1_000_000;

    private const int KeptPairs = 3;
    private const double RoomMost = 1.05;
    private readonly Lock gate = new();
    private readonly Dictionary<string, Task<Reading<PairPicture>>> kept = new(StringComparer.Ordinal);

    /// <summary>Draws the preview.</summary>
    /// <param name="request">The item, its pages, how they are laid; resolution, wish and folder are not used.</param>
    /// <param name="wish">What is dragged.</param>
    /// <param name="mostPixels">Most pixels, 1000 to <see cref="MostPixels"/>; the fewer the faster.</param>
    /// <param name="cancellation">Stops drawing; what is being read for others goes on.</param>
    /// <returns>The preview, or why there is none.</returns>
    public async Task<Reading<DrawnPreview>> DrawAsync(PanelRequest request, PreviewWish wish, int mostPixels, CancellationToken cancellation)
    {
        Bounds.Within(mostPixels, 1000, MostPixels);
        ItemRecord? item = request.ItemId is null ? null : await store.ItemAsync(request.ItemId, cancellation);
        if (item?.Artwork is null)
            return Refused("item", Invariant($"'{request.ItemId}'"), "an item whose artwork was measured");
        if (Fault(wish) is { } fault)
            return Reading.Refused<DrawnPreview>(fault);
        Reading<PanelJob> job = PanelJob.Of(request, item, catalogue);
        if (!job.IsTaken)
            return Reading.Refused<DrawnPreview>(job.Faults);
        Reading<PairPicture> pair = await PairAsync(request, item, job.Value, mostPixels).WaitAsync(cancellation);
        return pair.Then(p => Reading.Of(Draw(job.Value, p, wish, cancellation)));
    }

    private static DrawnPreview Draw(PanelJob job, PairPicture pair, PreviewWish wish, CancellationToken cancellation)
    {
        long start = Stopwatch.GetTimestamp();
        PanelPreview preview = new(job.Stack, job.Day, job.Night, wish.NightWeight, wish.WhiteStrength, wish.LiftPercent, wish.NightExposure);
        float[] room = new float[3 * pair.Width * pair.Height], lamp = new float[room.Length];
        Parallel.For(0, pair.Height, new ParallelOptions { CancellationToken = cancellation }, row =>
        {
            int line = 3 * pair.Width;
            preview.Pixels(pair.Pixels.AsSpan(2 * row * line, 2 * line), room.AsSpan(row * line, line), lamp.AsSpan(row * line, line));
        });

        StackLight light = new(job.Stack.Sheet, job.Stack.Layers, job.Day.Room, job.Night.Lamp, job.Day.Backing, job.Stack.ViewedFrom);
        float[] day = new float[3], night = new float[3];
        light.Row([.. light.Uncoloured.Select(c => (byte)Math.Round(c * wish.WhiteStrength))], 1, day, night);
        double lampMost = Math.Max(0.02, 1.1 * night.Max());
        byte[] bytes = TileCode.Write(room, lamp, pair.Width, RoomMost, lampMost);
        return new(
            new(pair.Width, pair.Height, RoomMost, lampMost, [.. day.Select(v => (double)v)], [.. night.Select(v => (double)v)], Stopwatch.GetElapsedTime(start).TotalMilliseconds),
            bytes);
    }

    private Task<Reading<PairPicture>> PairAsync(PanelRequest request, ItemRecord item, PanelJob job, int mostPixels)
    {
        string key = Invariant($"{item.Item.Id}/{item.Artwork!.Sha256}/{mostPixels}/{System.Text.Json.JsonSerializer.Serialize(request.Pair, ShopJson.Compact)}/{job.Printed}");
        lock (gate)
        {
            if (kept.TryGetValue(key, out Task<Reading<PairPicture>>? known) && !known.IsFaulted && !known.IsCanceled)
                return known;
            if (kept.Count >= KeptPairs)
                kept.Clear();
            return kept[key] = Task.Run(() => ReadAsync(request, item, job, mostPixels));
        }
    }

    private async Task<Reading<PairPicture>> ReadAsync(PanelRequest request, ItemRecord item, PanelJob job, int mostPixels)
    {
        double ppi = 25.4 * Math.Sqrt(mostPixels / (job.Printed.WidthMm * job.Printed.HeightMm));
        string name = Path.GetFileName(item.ArtworkPath);
        PairWish wish = request.Pair with
        {
            Day = request.Pair.Day with { File = name, Frame = request.Pair.Day.Frame ?? request.Pair.Day.Page },
            Night = request.Pair.Night with { File = name, Frame = request.Pair.Night.Frame ?? request.Pair.Night.Page },
        };
        Reading<PairFile> read = await pairs.ReadAsync(
            new(item.ArtworkPath, item.ArtworkPath, wish, job.Printed, job.BleedMm, ppi, job.ProfilePath(catalogue)), null, CancellationToken.None);
        if (!read.IsTaken)
            return Reading.Refused<PairPicture>(read.Faults);
        using PairFile pair = read.Value;
        (int width, int height, float[] pixels) = pair.Reduced(mostPixels, CancellationToken.None);
        return Reading.Of(new PairPicture(width, height, pixels));
    }

    private static InputFault? Fault(PreviewWish wish)
    {
        foreach ((string field, double value, double least, double most) in new[]
        {
            ("nightWeight", wish.NightWeight, 0.01, 100), ("whiteStrength", wish.WhiteStrength, 0.01, 1), ("liftPercent", wish.LiftPercent, 0, 60), ("nightExposure", wish.NightExposure, 0.02, 1),
        })
        {
            if (!(value >= least && value <= most))
                return new("preview", null, field, Invariant($"{value}"), Invariant($"{least} to {most}"));
        }

        return null;
    }

    private static Reading<DrawnPreview> Refused(string field, string found, string wanted) => Reading.Refused<DrawnPreview>(new InputFault("preview", null, field, found, wanted));
}
