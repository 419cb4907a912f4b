using System.Text;
using Laydown.Formats.Json;
using Laydown.Formats.TiffWriting;
using Laydown.Layout.Panels;
using Laydown.Measures;
using Laydown.Optics.Looks;
using Laydown.Plan.Drawings;
using Laydown.Press.Stacks;
using Laydown.Shop.Artwork;
using Laydown.Shop.Layout;
using Laydown.Shop.Run;

namespace Laydown.Output.PressFiles;

/// <summary>Writes the files of one run into a folder, in an order that tells of a full disk early.</summary>
internal sealed class RunMaker(RunContext context, RunFolder folder, ContoneResolution resolution, Progress progress)
{
    // Share of the whole at which each part of the work ends, percent; from timings of the demo day.
    private const double PlanesEnd = 60, SheetsEnd = 90, PreviewsEnd = 95;

    private const int PreviewPixels = 1600;

    private readonly List<(string Name, string What)> written = [];

    /// <summary>The file being written, for messages.</summary>
    public string Current { get; private set; } = "";

    /// <summary>Writes everything but the manifest, which <see cref="WriteManifest"/> adds.</summary>
    public async Task<Reading<int>> WriteAsync(IPageRenderer renderer, IRunDocuments documents, CancellationToken cancellation)
    {
        Current = "laydown of the items";
        Reading<RunPlanes> made = await RunPlanes.MakeAsync(
            context, renderer, resolution.Ppi, folder.WorkPath, (step, share) => progress.Tell(step, share * PlanesEnd), cancellation);
        if (!made.IsTaken)
            return Reading.Refused<int>(made.Faults);
        using RunPlanes planes = made.Value;
        WriteSheets(planes, cancellation);
        WritePreviews(planes, cancellation);
        WriteDrawings();
        WriteDocuments(documents, cancellation);
        return Reading.Of(written.Count);
    }

    /// <summary>Lists what was written, with its hashes.</summary>
    public IReadOnlyList<ManifestEntry> WriteManifest(DateTimeOffset made, CancellationToken cancellation)
    {
        Current = "manifest.json";
        return Manifest.Write(context.Run.Id, LayoutMark.Of(context.Run.Sheets), resolution, made, folder.FilesPath, written, cancellation);
    }

    private void WriteSheets(RunPlanes planes, CancellationToken cancellation)
    {
        int layers = context.Run.Stack.Layers.Count;
        for (int sheet = 0; sheet < context.Run.Sheets.Count; sheet++)
        {
            SheetPixels pixels = SheetPixels.Of(context.Run.Sheets[sheet], resolution.Ppi, PrintedOf);
            for (int layer = 0; layer < layers; layer++)
            {
                double before = ((sheet * layers) + layer) / (double)(context.Run.Sheets.Count * layers);
                string step = Invariant($"sheet {sheet + 1}, layer {layer + 1}");
                void Done(double share) => progress.Tell(
                    step, PlanesEnd + ((SheetsEnd - PlanesEnd) * (before + (share / (context.Run.Sheets.Count * layers)))));
                WriteLayer(planes, sheet, layer, pixels, Done, cancellation);
            }
        }
    }

    private void WriteLayer(
        RunPlanes planes, int sheet, int layer, SheetPixels pixels, Action<double> done, CancellationToken cancellation)
    {
        IReadOnlyList<InkPlane> inks = planes.InksOf(layer);
        string name = NameOf(sheet, layer);
        if (planes.SameFileAs(sheet, layer) is { } first)
        {
            // One file is printed on both faces: the second has a name of its own for the same bytes.
            NativeFolder.Link(Path.Combine(folder.FilesPath, NameOf(sheet, first)), Path.Combine(folder.FilesPath, name));
            written.Add((name, "contone"));
            done(1);
            return;
        }

        ContoneHeader header = new(pixels.Columns, pixels.Rows, resolution.Ppi, [.. inks.Select(i => i.Name)], Description(sheet, layer), null);
        (SheetPixels marked, Func<PlacedPixels, (IPlanes, bool)> planesOf) = MarkLayers.Of(context, sheet)
            .On(pixels, layer, inks, resolution.Ppi, piece => planes.Of(piece, layer));
        SheetBand bands = new(marked, inks.Count, planesOf, planes.TurnOf(sheet, layer));
        using FileStream stream = Create(name, "contone");
        using ContoneTiffWriter writer = new(stream, name, header);
        byte[] band = new byte[checked(writer.BandRows * header.RowBytes)];
        for (int row = 0; row < pixels.Rows; row += writer.BandRows)
        {
            cancellation.ThrowIfCancellationRequested();
            int rows = Math.Min(writer.BandRows, pixels.Rows - row);
            bands.Fill(row, rows, band);
            writer.WriteBand(band, rows);
            done((row + rows) / (double)pixels.Rows);
        }

        writer.Finish();
        stream.Flush();
    }

    private string NameOf(int sheet, int layer) => Invariant($"sheet-{sheet + 1:00}-layer-{layer + 1}-{FileWord(context.Run.Stack.Layers[layer].Group)}.tif");

    private void WritePreviews(RunPlanes planes, CancellationToken cancellation)
    {
        StackLook day = SheetLook.Day(context, planes);
        StackLook? lit = context.Run.Stack.Lit ? SheetLook.Lit(context, planes) : null;
        StackLook? back = context.Run.Stack.SeenFrom == SeenFrom.BothSides ? SheetLook.Back(context, planes) : null;
        for (int sheet = 0; sheet < context.Run.Sheets.Count; sheet++)
        {
            progress.Tell(
                Invariant($"preview of sheet {sheet + 1}"), SheetsEnd + ((PreviewsEnd - SheetsEnd) * sheet / context.Run.Sheets.Count));
            SheetPreview preview = new(planes, context.Run.Sheets[sheet], MarkLayers.Of(context, sheet), PrintedOf, PreviewPixels, resolution.Ppi, context.Optics, cancellation);
            WriteBytes(Invariant($"sheet-{sheet + 1:00}-preview.png"), "preview", preview.Png(day, cancellation));
            if (lit is not null)
                WriteBytes(Invariant($"sheet-{sheet + 1:00}-lit.png"), "lit-preview", preview.Png(lit, cancellation));
            if (back is not null)
                WriteBytes(Invariant($"sheet-{sheet + 1:00}-back.png"), "back-preview", preview.Png(back, cancellation, Laydown.Press.Stacks.Viewer.Back));
        }
    }

    private void WriteDrawings()
    {
        Dictionary<string, string> names = context.Run.Sheets.SelectMany(s => s.Placements)
            .Select(p => p.PieceId).Distinct(StringComparer.Ordinal).ToDictionary(id => id, NameOf, StringComparer.Ordinal);
        for (int sheet = 0; sheet < context.Run.Sheets.Count; sheet++)
        {
            WriteText(Invariant($"sheet-{sheet + 1:00}-cut.svg"), "cut", CutDrawing.Svg(context, sheet));
            WriteBytes(Invariant($"sheet-{sheet + 1:00}-cut.pdf"), "cut-pdf", CutPdf.Bytes(context, sheet));
            WriteText(
                Invariant($"sheet-{sheet + 1:00}-layout.svg"), "layout",
                BoardDrawing.Draw(context.Run.Sheets[sheet], names, context.Stock.Grain, RunMarks.Of(context, sheet).Marks));
        }

        WriteBytes("run.json", "run", LaydownJson.ToBytes(context.Run));
    }

    private string NameOf(string pieceId)
    {
        string item = SheetPixels.ItemOf(pieceId);
        string title = context.Items.FirstOrDefault(i => i.Item.Id == item)?.Item.Title ?? item;
        return pieceId.Length > item.Length ? Invariant($"Panel {pieceId[(item.Length + 1)..]}, {title}") : title;
    }

    private void WriteDocuments(IRunDocuments documents, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        progress.Tell("set-up sheet", PreviewsEnd);
        WriteText("set-up.html", "set-up", documents.SetUpHtml(context));
        WriteBytes("set-up.pdf", "set-up", documents.SetUpPdf(context));
        foreach ((string item, PanelPlan plan) in RunMarks.PanelPlans(context.Run))
            WriteBytes(Invariant($"hanging-{QuoteOrder.FileNameOf(item)}.pdf"), "hanging-plan", documents.HangingPdf(context, item, plan));
    }

    private void WriteText(string name, string what, string text) => WriteBytes(name, what, Encoding.UTF8.GetBytes(text));

    private void WriteBytes(string name, string what, byte[] bytes)
    {
        using FileStream stream = Create(name, what);
        stream.Write(bytes);
        stream.Flush();
    }

    private FileStream Create(string name, string what)
    {
        Current = name;
        written.Add((name, what));
        return new FileStream(Path.Combine(folder.FilesPath, name), FileMode.Create, FileAccess.ReadWrite, FileShare.Read);
    }

    private string Description(int sheet, int layer)
    {
        Layer printed = context.Run.Stack.Layers[layer];
        return Invariant($"{context.ShopName}, run {context.Run.Id}, layout {LayoutMark.Short(LayoutMark.Of(context.Run.Sheets))}, sheet {sheet + 1} of {context.Run.Sheets.Count}, layer {layer + 1} of ")
            + Invariant($"{context.Run.Stack.Layers.Count} ({FileWord(printed.Group)}, {(printed.Face == SheetFace.First ? "first" : "second")} surface), ")
            + Invariant($"{context.Stock.Name}; contone {resolution.Because}");
    }

    private SizeMm PrintedOf(string itemId) => context.Items.FirstOrDefault(i => i.Item.Id == itemId)?.Item.Printed
        ?? throw new ArgumentException(Invariant($"Piece of item {itemId}: wanted an item of run {context.Run.Id}."), nameof(itemId));

    private static string FileWord(InkGroup group) => group switch
    {
        InkGroup.Colour => "colour",
        InkGroup.White => "white",
        InkGroup.Clear => "clear",
        InkGroup.BlockOut => "block-out",
        _ => throw new ArgumentException(Invariant($"Group: found {group}; wanted a known group."), nameof(group)),
    };
}
