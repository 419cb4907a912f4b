using System.Collections.Concurrent;
using System.Globalization;
using System.Runtime.InteropServices;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Optics.Looks;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Press.Machines;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;
using Laydown.Shop.Layers;
using Laydown.Shop.Orders;
using Laydown.Shop.Proof;

namespace Laydown.Shop.Run;

/// <summary>Opens a made sheet for looking at: finds its press files, what their inks are and the light they are seen in.</summary>
/// <param name="folder">The shop's folder.</param>
/// <param name="catalogue">What the shop has.</param>
/// <param name="store">What it remembers.</param>
/// <param name="planes">Reads press files.</param>
public sealed partial class OpenSheet(ShopFolder folder, Catalogue catalogue, IShopStore store, IPressPlanes planes)
{
    // Reflectance of a white wall behind a piece without a lamp; common practice, no source.
    private const double Wall = 0.85;

    private const int MostOpen = 32;
    private readonly ConcurrentDictionary<string, OpenedSheet> opened = new(StringComparer.Ordinal);

    /// <summary>The sheet, or why it cannot be looked at: no such run, not made, no such sheet, no dots, a damaged file.</summary>
    /// <param name="runId">The run.</param>
    /// <param name="number">Sheet from 1.</param>
    /// <param name="files"><c>contone</c>, <c>dots</c>, or null for dots where there are some.</param>
    /// <param name="cancellation">Stops.</param>
    public async Task<Reading<OpenedSheet>> OpenAsync(string runId, int number, string? files, CancellationToken cancellation)
    {
        RunRecord? record = await store.RunAsync(runId, cancellation);
        if (record is null)
            return Refused(runId, "id", "no run of that id", "the id of a run of this shop");
        if (record.FolderName is not { } name || Path.GetFileName(name) != name)
            return Refused(runId, "state", record.State.ToString(), "a run whose press files are made");
        if (number < 1 || number > record.Run.Sheets.Count)
            return Refused(runId, "sheet", Invariant($"{number}"), Invariant($"1 to {record.Run.Sheets.Count}"));
        if (files is not (null or "contone" or "dots"))
            return Refused(runId, "files", files.Length > 40 ? files[..40] : files, "contone or dots");

        List<(ManifestEntry Entry, int Layer)> all = [.. record.Files.Select(e => (Entry: e, Match: Named().Match(e.Name)))
            .Where(f => f.Match.Success && Number(f.Match, "sheet") == number).Select(f => (f.Entry, Number(f.Match, "layer")))];
        bool hasDots = all.Any(f => f.Entry.What == "dots"), hasContone = all.Any(f => f.Entry.What == "contone");
        bool dots = files is null ? hasDots : files == "dots";
        List<(ManifestEntry Entry, int Layer)> chosen = [.. all.Where(f => f.Entry.What == (dots ? "dots" : "contone")).OrderBy(f => f.Layer)];
        if (chosen.Count == 0)
            return Refused(runId, "files", dots ? "no dots of this sheet" : "no contone of this sheet", dots ? "a run whose dots are made" : "a run whose press files are made");

        string key = Invariant($"{runId}/{number}/{dots}/{hasDots && hasContone}/{string.Concat(chosen.Select(f => f.Entry.Sha256))}");
        if (opened.TryGetValue(key, out OpenedSheet? known))
            return Reading.Of(known);
        return Opened(record, number, dots, chosen).Then(sheet =>
        {
            if (opened.Count >= MostOpen)
                opened.Clear();
            return Reading.Of(opened[key] = sheet with { Sheet = sheet.Sheet with { HasBoth = hasDots && hasContone } });
        });
    }

    private Reading<OpenedSheet> Opened(RunRecord record, int number, bool dots, List<(ManifestEntry Entry, int Layer)> files)
    {
        Laydown.Plan.Runs.Run run = record.Run;
        PrintCondition? condition = catalogue.Conditions.FirstOrDefault(c => c.Id == run.ConditionId);
        InkSet? inks = catalogue.InkSets.FirstOrDefault(s => s.Id == condition?.InkSetId);
        Stock? stock = catalogue.Stocks.FirstOrDefault(s => s.Id == run.StockId);
        Mode? mode = catalogue.Presses.FirstOrDefault(p => p.Id == run.PressId)?.FindMode(run.Mode.ModeId);
        if (condition is null || inks is null || stock is null || mode is null)
            return Refused(run.Id, "catalogue", "no such condition, inks, stock or mode in it", "the shop as it was when the run was planned");

        List<PressPlane> all = [];
        PressFileShape? first = null;
        foreach ((ManifestEntry entry, int layer) in files)
        {
            string path = Path.Combine(folder.Runs, Path.GetFileName(record.FolderName!), Path.GetFileName(entry.Name));
            PressFileAt at = new(path, entry.Sha256, dots ? [0, 1] : []);
            Reading<PressFileShape> read = planes.Shape(at);
            if (!read.IsTaken)
                return Reading.Refused<OpenedSheet>(read.Faults);
            PressFileShape shape = read.Value;
            first ??= shape;
            if ((shape.Columns, shape.Rows) != (first.Columns, first.Rows) || layer > run.Stack.Layers.Count)
                return Refused(run.Id, entry.Name, Invariant($"{shape.Columns} × {shape.Rows}, layer {layer}"), Invariant($"{first.Columns} × {first.Rows} and a layer of the stack"));
            if (shape.Bits == 2)
                at = at with { DropShares = [0, .. mode.DropsPl.Select(d => d / mode.DropsPl[^1])] };
            all.AddRange(PlanesOf(run.Stack, layer, at, shape, inks, all.Count, run.Sheets[number - 1].Faces?.Turn ?? SheetTurn.Sideways));
        }

        return StackLights.SheetOf(stock).Then(sheet => Reading.Of(Seen(run, number, dots, first!, all, sheet, inks, condition, mode)));
    }

    private static IEnumerable<PressPlane> PlanesOf(LayerStack stack, int layer, PressFileAt file, PressFileShape shape, InkSet inks, int before, SheetTurn turn)
    {
        Layer printed = stack.Layers[layer - 1];
        bool turnedOver = printed.Face != stack.Layers[0].Face;
        for (int channel = 0; channel < shape.Inks; channel++)
        {
            string name = channel < shape.InkNames.Count && shape.InkNames[channel].Length > 0 ? shape.InkNames[channel] : Invariant($"ink {channel + 1}");
            string plain = name.EndsWith(" 2", StringComparison.Ordinal) ? name[..^2] : name;
            InkRole role = inks.Inks.FirstOrDefault(i => i.Name == plain)?.Role ?? InkRoleNames.Find(plain) ?? printed.Group switch
            {
                InkGroup.White => InkRole.White,
                InkGroup.Clear => InkRole.Clear,
                _ => InkRole.Black,
            };
            yield return new(before + channel + 1, layer, name, role, Path.GetFileName(file.Path), channel, turnedOver && turn == SheetTurn.Sideways, turnedOver && turn == SheetTurn.HeadToFoot) { File = file };
        }
    }

    private OpenedSheet Seen(
        Laydown.Plan.Runs.Run run, int number, bool dots, PressFileShape shape, List<PressPlane> all, LookSheet sheet, InkSet inks, PrintCondition condition, Mode mode)
    {
        InkOptics? optics = catalogue.OpticsOf(condition);
        Scene day = Scene.Day(condition.RoomLux), night = Scene.Lit();
        StackLight light = new(
            sheet,
            [.. all.GroupBy(p => p.Layer).Select(g => new LookLayer(
                StackLights.FaceOf(run.Stack.Layers[g.Key - 1].Face), [.. g.Select(p => StackLights.InkOf(p.Role, inks, optics))]))],
            day.Room, night.Lamp, run.Stack.Lit ? day.Backing : Wall);
        (double room, double lamp, double[] lampWhite, byte[] spots) = Most(light);
        SheetLayout layout = run.Sheets[number - 1];
        string mark = Convert.ToHexStringLower(SHA256.HashData(
            [.. Encoding.ASCII.GetBytes(string.Join('/', all.Select(p => p.File.Sha256 + string.Join(',', p.File.DropShares.Select(s => Invariant($"{s:R}")))))), .. spots]))[..16];
        return new(
            new(run.Id, number, dots, shape.Columns, shape.Rows, LookLevels.CountOf(shape.Columns, shape.Rows),
                layout.Sheet.WidthMm / shape.Columns, layout.Sheet.HeightMm / shape.Rows, layout.Sheet, all, Pieces(run, layout),
                run.Stack.Lit, run.Stack.Layers[0].Face == SheetFace.Second, room, lamp, lampWhite, InkVolume.FullMlPerM2(mode), mark),
            run, light, [.. all.Select(p => StackLights.ActingOf(p.Role, optics))]);
    }

    // Nothing printed lets most light through, a full white returns most; the spots also tell one set of optics from another.
    private static (double Room, double Lamp, double[] LampWhite, byte[] Spots) Most(StackLight light)
    {
        int width = light.InkCount + 2;
        byte[] spots = new byte[light.InkCount * width];
        for (int ink = 0; ink < light.InkCount; ink++)
        {
            spots[(ink * width) + ink] = 255;
            spots[(ink * width) + width - 1] = light.Uncoloured[ink];
        }

        float[] day = new float[3 * width], night = new float[3 * width];
        light.Row(spots, width, day, night);
        return (
            Math.Max(1, 1.05 * day.Max()), Math.Max(0.02, 1.05 * night.Max()), [.. night[^3..].Select(v => (double)v)],
            [.. MemoryMarshal.AsBytes(day.AsSpan()), .. MemoryMarshal.AsBytes(night.AsSpan())]);
    }

    private static IReadOnlyList<PlacedName> Pieces(Laydown.Plan.Runs.Run run, SheetLayout layout) => [.. layout.Placements.Select(p =>
    {
        string[] parts = p.PieceId.Split('/', 2);
        string title = run.Items.FirstOrDefault(i => i.ItemId == parts[0])?.Title ?? parts[0];
        return new PlacedName(
            parts.Length > 1 ? Invariant($"{title}, panel {parts[1]}") : title, parts[0], p.Copy,
            p.Place.XMm, layout.Sheet.HeightMm - p.Place.TopMm, p.Place.WidthMm, p.Place.HeightMm);
    })];

    private static int Number(Match match, string group) => int.Parse(match.Groups[group].ValueSpan, NumberStyles.None, CultureInfo.InvariantCulture);

    private static Reading<OpenedSheet> Refused(string runId, string field, string found, string wanted) =>
        Reading.Refused<OpenedSheet>(new InputFault(Invariant($"run {(runId.Length > 60 ? runId[..60] : runId)}"), null, field, found, wanted));

    [GeneratedRegex(@"^sheet-(?<sheet>\d{1,5})-layer-(?<layer>\d{1,3})-[a-z0-9-]+\.tif$", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant)]
    private static partial Regex Named();
}
