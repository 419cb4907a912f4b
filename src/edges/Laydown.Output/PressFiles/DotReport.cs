using System.Security.Cryptography;
using System.Text.Json;
using System.Text.Json.Nodes;
using Laydown.Formats.TiffWriting;
using Laydown.Measures;
using Laydown.Press.Stacks;
using Laydown.Raster.Sheets;
using Laydown.Shop.Run;

namespace Laydown.Output.PressFiles;

/// <summary>What is told of dots that were made: files, ink by file and by piece, in the manifest of the run.</summary>
internal sealed class DotReport(RunContext context, DotDrops drops)
{
    /// <summary>How dot files are called in the manifest.</summary>
    public const string What = "dots";

    private readonly List<(DotLayer Layer, DotHeader Header, DotTotals Totals)> made = [];
    private readonly List<(DotLayer Layer, DotHeader Header, DotTotals Totals)> shared = [];

    /// <summary>Dot files, in the order of sheets, layers and inks.</summary>
    public IReadOnlyList<(DotLayer Layer, int Ink, DotHeader Header, DotTotals Totals)> Files =>
    [
        .. made.Concat(shared).OrderBy(l => l.Layer.Sheet).ThenBy(l => l.Layer.Layer)
            .SelectMany(l => l.Layer.Inks.Select((_, ink) => (l.Layer, ink, l.Header, l.Totals))),
    ];

    /// <summary>Notes a layer that is whole.</summary>
    public void Add(DotLayer layer, DotHeader header, DotTotals totals) => made.Add((layer, header, totals));

    /// <summary>Notes layers that share the files of earlier sheets.</summary>
    public void Share(IReadOnlyList<DotLayer> layers)
    {
        foreach (DotLayer layer in layers)
        {
            (_, DotHeader header, DotTotals totals) = made.First(m => m.Layer.Sheet == (layer.Same ?? layer.Sheet) && m.Layer.Layer == (layer.SameLayer ?? layer.Layer));
            shared.Add((layer, header, totals));
        }
    }

    /// <summary>Gives shared files their names: links, which take no room.</summary>
    public void LinkShared(string folder)
    {
        foreach ((DotLayer layer, _, _) in shared)
        {
            for (int ink = 0; ink < layer.Inks.Count; ink++)
            {
                string link = Path.Combine(folder, layer.FileName(ink));
                File.Delete(link);
                NativeFolder.Link(Path.Combine(folder, layer.SharedName(ink)), link);
            }
        }
    }

    /// <summary>Files with the hashes of what is read back.</summary>
    public IReadOnlyList<ManifestEntry> Entries(string folder, CancellationToken cancellation)
    {
        var files = Files;
        ManifestEntry[] entries = new ManifestEntry[files.Count];
        AllCores.Run(
            files.Count,
            () => new byte[1 << 20],
            (number, block) =>
            {
                (DotLayer layer, int ink, DotHeader header, DotTotals totals) = files[number];
                string name = layer.FileName(ink);
                using FileStream stream = new(Path.Combine(folder, name), FileMode.Open, FileAccess.Read, FileShare.Read, 0);
                entries[number] = new(name, What, stream.Length, Hash(stream, block, cancellation))
                {
                    Sheet = layer.Sheet + 1,
                    Layer = layer.Layer + 1,
                    Ink = layer.Inks[ink].Name,
                    Bits = header.BitsPerDot,
                    DpiScan = context.Mode.ScanDpi,
                    DpiFeed = context.Mode.FeedDpi,
                    Ml = drops.Ml(totals.Of(ink)),
                };
            },
            cancellation);
        return entries;
    }

    /// <summary>The manifest of the run with its dots, from the one it has.</summary>
    /// <param name="path">The manifest it has.</param>
    /// <param name="dots">Dot files.</param>
    /// <param name="instant">When they were made.</param>
    /// <exception cref="InvalidDataException">The manifest it has cannot be read.</exception>
    public JsonObject Manifest(string path, IReadOnlyList<ManifestEntry> dots, DateTimeOffset instant)
    {
        if (Parsed(path) is not { } manifest || manifest["files"] is not JsonArray files)
            throw new InvalidDataException("manifest.json: found no list of files");
        foreach (JsonNode? file in files.Where(f => (string?)f?["what"] == What).ToList())
            files.Remove(file);
        var own = Files;
        for (int number = 0; number < dots.Count; number++)
            files.Add(Entry(dots[number], own[number].Totals.Of(own[number].Ink)));
        manifest["dots"] = new JsonObject
        {
            ["made"] = instant.ToUniversalTime().ToString("O"),
            ["mode"] = context.Mode.Id,
            ["dropsPl"] = new JsonArray([.. drops.VolumesPl.Skip(1).Select(v => (JsonNode)v)]),
            ["sheets"] = new JsonArray([.. context.Run.Sheets.Select((sheet, number) => (JsonNode)new JsonObject { ["sheet"] = number + 1, ["repeats"] = sheet.Repeats })]),
            ["pieces"] = new JsonArray([.. Pieces()]),
        };
        return manifest;
    }

    /// <summary>Printed size of an item, mm.</summary>
    public SizeMm PrintedOf(string itemId) => context.Items.FirstOrDefault(i => i.Item.Id == itemId)?.Item.Printed
        ?? throw new ArgumentException(Invariant($"Piece of item {itemId}: wanted an item of run {context.Run.Id}."), nameof(itemId));

    /// <summary>A line for people in each file of a layer.</summary>
    public string Description(DotLayer layer)
    {
        Layer printed = context.Run.Stack.Layers[layer.Layer];
        return Invariant($"{context.ShopName}, run {context.Run.Id}, sheet {layer.Sheet + 1} of {context.Run.Sheets.Count}, layer {layer.Layer + 1} of ")
            + Invariant($"{context.Run.Stack.Layers.Count} ({(printed.Face == SheetFace.First ? "first" : "second")} surface), {context.Stock.Name}; ")
            + Invariant($"dots of mode {context.Mode.Id}, drops of {string.Join(", ", drops.VolumesPl.Skip(1))} pl, 0 = bare");
    }

    private static JsonObject Entry(ManifestEntry entry, ReadOnlySpan<long> counts) => new()
    {
        ["name"] = entry.Name,
        ["what"] = entry.What,
        ["bytes"] = entry.Bytes,
        ["sha256"] = entry.Sha256,
        ["sheet"] = entry.Sheet,
        ["layer"] = entry.Layer,
        ["ink"] = entry.Ink,
        ["bits"] = entry.Bits,
        ["dpiScan"] = entry.DpiScan,
        ["dpiFeed"] = entry.DpiFeed,
        ["ml"] = entry.Ml,
        ["dots"] = new JsonArray([.. counts.ToArray().Select(c => (JsonNode)c)]),
    };

    // Ink of each piece: of one sheet, layer by layer, ink by ink.
    private IEnumerable<JsonNode> Pieces()
    {
        foreach ((DotLayer layer, int ink, _, DotTotals totals) in Files)
        {
            for (int piece = 0; piece < layer.Placement.Pieces.Count; piece++)
            {
                yield return new JsonObject
                {
                    ["sheet"] = layer.Sheet + 1,
                    ["layer"] = layer.Layer + 1,
                    ["ink"] = layer.Inks[ink].Name,
                    ["piece"] = context.Run.Sheets[layer.Sheet].Placements[piece].PieceId,
                    ["copy"] = context.Run.Sheets[layer.Sheet].Placements[piece].Copy,
                    ["ml"] = drops.Ml(totals.Of(piece, ink)),
                };
            }
        }
    }

    private static JsonObject? Parsed(string path)
    {
        try
        {
            return JsonNode.Parse(File.ReadAllText(path)) as JsonObject;
        }
        catch (JsonException e)
        {
            throw new InvalidDataException("manifest.json: " + e.Message, e);
        }
    }

    private static string Hash(FileStream stream, byte[] block, CancellationToken cancellation)
    {
        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        for (int read = stream.Read(block); read > 0; read = stream.Read(block))
        {
            cancellation.ThrowIfCancellationRequested();
            hash.AppendData(block, 0, read);
        }

        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }
}
