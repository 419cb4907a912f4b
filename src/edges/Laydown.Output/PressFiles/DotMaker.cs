using System.Text.Json.Nodes;
using Laydown.Formats.TiffWriting;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Raster.Screens;
using Laydown.Raster.Sheets;
using Laydown.Shop.Run;

namespace Laydown.Output.PressFiles;

/// <summary>One make of the dots of a run: sheet after sheet, layer after layer, all cores on the bands of one layer.</summary>
/// <param name="context">The run.</param>
/// <param name="wish">How files are packed, and how contone becomes dots.</param>
/// <param name="drops">Drops of the mode.</param>
/// <param name="folder">Where dots are made.</param>
/// <param name="pictures">Pictures of the items.</param>
/// <param name="progress">Told how far it is.</param>
/// <param name="clock">Measures the rate.</param>
/// <param name="workers">Bands made at once.</param>
/// <param name="current">Told the file in hand, for messages.</param>
internal sealed class DotMaker(
    RunContext context, DotsWish wish, DotDrops drops, DotFolder folder, DotPictures pictures, Progress progress, TimeProvider clock,
    int workers, Action<string> current)
{
    /// <summary>Rows of a strip as far as room on the disk is concerned.</summary>
    private const int UsualStripRows = 128;

    /// <summary>Room that is left free for all else, bytes.</summary>
    private const long Spare = 64 << 20;

    // Share of the whole that making dots takes; the rest is hashing and flushing.
    private const double DotsEnd = 92;

    private readonly DotReport report = new(context, drops);

    /// <summary>Makes all dot files in scratch; what an earlier make left there and is sound is kept.</summary>
    /// <param name="freeBytes">Room on the disk.</param>
    /// <param name="cancellation">Stops within a second.</param>
    /// <returns>How many files there are, or why there are none.</returns>
    public async Task<Reading<int>> MakeAsync(long freeBytes, CancellationToken cancellation)
    {
        Reading<IReadOnlyList<DotLayer>> planned = Plan();
        if (!planned.IsTaken)
            return Reading.Refused<int>(planned.Faults);
        IReadOnlyList<DotLayer> layers = planned.Value;
        if (NoRoom(layers, freeBytes) is { } full)
            return Reading.Refused<int>(full);
        progress.Tell(folder.Anew is { } anew ? Invariant($"dots: {anew}") : "dots", 0);
        TimeLeft time = new(clock, layers.Where(l => !l.IsShared).Sum(l => l.Work));
        List<IGrouping<int, DotLayer>> sheets = [.. layers.Where(l => !l.IsShared).GroupBy(l => l.Sheet)];
        for (int sheet = 0; sheet < sheets.Count; sheet++)
        {
            IReadOnlyList<InputFault> faults = await MakeSheetAsync([.. sheets[sheet]], time, cancellation);
            if (faults.Count > 0)
            {
                folder.Clear();
                return Reading.Refused<int>(faults);
            }

            await pictures.ReleaseAsync(sheets.Skip(sheet + 1).Select(s => s.First().Placement));
        }

        report.Share([.. layers.Where(l => l.IsShared)]);
        return Reading.Of(report.Files.Count);
    }

    /// <summary>Puts the dots beside the run's other files.</summary>
    /// <param name="runFolder">The run's folder.</param>
    /// <param name="files">Its files; earlier dots among them go.</param>
    /// <param name="cancellation">Looked at until the last step.</param>
    /// <returns>All files of the folder.</returns>
    public IReadOnlyList<ManifestEntry> Publish(string runFolder, IReadOnlyList<ManifestEntry> files, CancellationToken cancellation)
    {
        current("manifest.json");
        progress.Tell("hashes of the dots", DotsEnd);
        report.LinkShared(folder.FilesPath);
        IReadOnlyList<ManifestEntry> dots = report.Entries(folder.FilesPath, cancellation);
        List<ManifestEntry> others = [.. files.Where(f => f.What != DotReport.What)];
        JsonObject manifest = report.Manifest(Path.Combine(runFolder, "manifest.json"), dots, clock.GetUtcNow());
        progress.Tell("dots to disk", DotsEnd + 4);
        folder.Publish(runFolder, others, manifest, cancellation);
        progress.Tell("made", 100);
        return [.. others, .. dots];
    }

    private Reading<IReadOnlyList<DotLayer>> Plan()
    {
        List<IReadOnlyList<InkPlane>> inks = [];
        for (int layer = 0; layer < context.Run.Stack.Layers.Count; layer++)
        {
            Reading<IReadOnlyList<InkPlane>> planes = pictures.InksOf(layer);
            if (!planes.IsTaken)
                return Reading.Refused<IReadOnlyList<DotLayer>>(planes.Faults);
            inks.Add(planes.Value);
        }

        List<DotLayer> layers = [];
        Dictionary<string, int> seen = [];
        for (int sheet = 0; sheet < context.Run.Sheets.Count; sheet++)
        {
            // Copies are numbered through, so the same picture is told by all but their numbers.
            SheetLayout layout = context.Run.Sheets[sheet];
            string key = Invariant($"{layout.Sheet}|{layout.Faces}|{string.Join('|', layout.Placements.Select(p => p with { Copy = 1 }))}|{MarkLayers.Of(context, sheet).Key}");
            int? same = seen.TryGetValue(key, out int first) ? first : null;
            seen.TryAdd(key, sheet);
            SheetDots placement = SheetDots.Of(layout, context.Mode.ScanDpi, context.Mode.FeedDpi, report.PrintedOf);
            layers.AddRange(inks.Select((planes, layer) => new DotLayer(sheet, layer, planes, placement, same)
            {
                // Of sheets whose faces are printed from one file, the second face has other names for the same bytes.
                SameLayer = layout.Faces is { OneFile: true } && IsTurnedOver(layer) ? BackUpLayers.Of(context.Run.Stack, layer) : null,
            }));
        }

        return Reading.Of<IReadOnlyList<DotLayer>>(layers);
    }

    // Packed files may be as long as unpacked ones, so both want the same room; plates lie in scratch while a sheet is made.
    private InputFault? NoRoom(IReadOnlyList<DotLayer> layers, long freeBytes)
    {
        long files = layers.Where(l => !l.IsShared).Sum(l => l.Inks.Count * Header(l, 0, UsualStripRows).PlainFileBytes);
        long plates = layers.Select(l => pictures.PlatesOf(l.Placement).Sum(p => p.ScratchBytes)).DefaultIfEmpty(0).Max();
        long wanted = Math.Max(0, files - folder.BytesThere) + plates + Spare;
        return wanted <= freeBytes ? null : new(
            Invariant($"run {context.Run.Id}"), null, "disk", Invariant($"{freeBytes} bytes free"),
            Invariant($"{wanted} bytes: {files} for dots, {plates} for plates while they are made, {Spare} to spare"));
    }

    private async Task<IReadOnlyList<InputFault>> MakeSheetAsync(IReadOnlyList<DotLayer> layers, TimeLeft time, CancellationToken cancellation)
    {
        SheetDots placement = layers[0].Placement;
        string checkedPath = Path.Combine(folder.WorkPath, Invariant($"sheet-{layers[0].Sheet + 1:00}.checked"));
        using CancellationTokenSource over = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        Task? ahead = null;
        try
        {
            foreach (DotLayer layer in layers)
            {
                Reading<SheetJob> job = JobOf(layer);
                if (!job.IsTaken)
                    return job.Faults;
                await Task.Run(() => MakeLayer(layer, new(job.Value, workers), time, StartAhead, cancellation), CancellationToken.None);
            }

            // Plates are final only when they have ended well; where all bands were kept, an earlier make may have ended before it knew.
            if (File.Exists(checkedPath))
                return [];
            IReadOnlyList<InputFault> faults = await pictures.FaultsAsync(placement);
            if (faults.Count == 0)
                await File.WriteAllTextAsync(checkedPath, "", cancellation);
            return faults;
        }
        catch (InvalidDataException)
        {
            // A page that cannot be rendered shows where it is read; its own words say more.
            cancellation.ThrowIfCancellationRequested();
            IReadOnlyList<InputFault> faults = await pictures.FaultsAsync(placement);
            if (faults.Count > 0)
                return faults;
            throw;
        }
        finally
        {
            await over.CancelAsync();
            if (ahead is not null)
                await ahead.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }

        void StartAhead() => ahead ??= Task.Run(() => DotPictures.RenderAheadAsync(pictures.PlatesOf(placement), over.Token), CancellationToken.None);
    }

    private void MakeLayer(DotLayer layer, SheetEngine engine, TimeLeft time, Action startAhead, CancellationToken cancellation)
    {
        DotHeader[] headers = [.. Enumerable.Range(0, layer.Inks.Count).Select(ink => Header(layer, ink, engine.BandRows))];
        string step = Invariant($"dots of sheet {layer.Sheet + 1}, layer {layer.Layer + 1}");
        current(layer.FileName(0));
        double bandWork = layer.Work / engine.Bands;
        int finished = 0;
        using DotSink sink = DotSink.Open(
            [.. Enumerable.Range(0, layer.Inks.Count).Select(ink => Path.Combine(folder.FilesPath, layer.FileName(ink)))],
            headers,
            Path.Combine(folder.WorkPath, Invariant($"sheet-{layer.Sheet + 1:00}-layer-{layer.Layer + 1}.journal")),
            layer.Placement.Pieces.Count + MarkLayers.Of(context, layer.Sheet).In(layer.Layer).Count,
            _ => Tell(time.Make(bandWork)),
            cancellation);
        finished = sink.Kept;
        time.Keep(sink.Kept * bandWork);
        if (sink.Kept < engine.Bands)
        {
            startAhead();
            engine.Run(sink, null, cancellation);
        }

        sink.Finish();
        report.Add(layer, headers[0], sink.Totals);

        void Tell((double Share, double? SecondsLeft) now) => progress.Tell(
            Invariant($"{step}: band {Interlocked.Increment(ref finished)} of {engine.Bands}{Words(now.SecondsLeft)}"), now.Share * DotsEnd, now.SecondsLeft);
    }

    private Reading<SheetJob> JobOf(DotLayer layer)
    {
        List<SheetPicture> shown = [];
        foreach (PlacedPicture placed in layer.Placement.Pictures)
        {
            Reading<SheetPicture> picture = pictures.Of(placed, LayerOf(placed, layer.Layer));
            if (!picture.IsTaken)
                return Reading.Refused<SheetJob>(picture.Faults);
            shown.Add(picture.Value);
        }

        bool turnedOver = IsTurnedOver(layer.Layer);
        SheetTurn? turn = turnedOver ? context.Run.Sheets[layer.Sheet].Faces?.Turn ?? SheetTurn.Sideways : null;
        ILayerScreen screen = DeadNozzles.Mended(context, layer, LayerScreens.Of(DotInks.Of(layer.Inks), drops.Levels, wish.Screen));
        IReadOnlyList<PlacedPiece> pieces = layer.Placement.PiecesOf(placed => MirroredLayer(placed.ItemId, LayerOf(placed, layer.Layer)), turn);
        (IReadOnlyList<SheetPicture> markPictures, IReadOnlyList<PlacedPiece> marks) = MarkLayers.Of(context, layer.Sheet)
            .Dots(layer, context.Mode.ScanDpi, context.Mode.FeedDpi, shown.Count, turn);
        return Reading.Of(new SheetJob(layer.Placement.Columns, layer.Placement.Rows, [.. shown, .. markPictures], [.. pieces, .. marks], screen));
    }

    private bool IsTurnedOver(int layer) => context.Run.Stack.Layers[layer].Face != context.Run.Stack.Layers[0].Face;

    // A piece with its back up shows in each layer what others show on the other face.
    private int LayerOf(PlacedPicture placed, int layer) => placed.BackUp
        ? BackUpLayers.Of(InkAgreement.StackOf(context, context.Items.First(i => i.Item.Id == placed.ItemId)), layer)
        : layer;

    private bool MirroredLayer(string itemId, int layer) =>
        InkAgreement.StackOf(context, context.Items.First(i => i.Item.Id == itemId)).Layers[layer].Mirrored;

    private DotHeader Header(DotLayer layer, int ink, int rowsPerStrip) => layer.Header(
        ink, drops.Levels.BitsPerDot, (context.Mode.ScanDpi, context.Mode.FeedDpi), rowsPerStrip, PackingOf(wish.Compression), report.Description(layer));

    private static DotPacking PackingOf(DotCompression compression) => compression switch
    {
        DotCompression.None => DotPacking.None,
        DotCompression.PackBits => DotPacking.PackBits,
        DotCompression.Deflate => DotPacking.Deflate,
        _ => throw new ArgumentException(Invariant($"Compression: found {compression}; wanted None, PackBits or Deflate."), nameof(compression)),
    };

    private static string Words(double? seconds) => seconds switch
    {
        null => "",
        < 90 => Invariant($", about {Math.Ceiling(seconds.Value):0} s left"),
        _ => Invariant($", about {Math.Ceiling(seconds.Value / 60):0} min left"),
    };
}
