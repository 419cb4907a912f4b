using System.Security.Cryptography;
using Laydown.Measures;
using Laydown.Output.PressFiles;
using Laydown.Press.Inks;
using Laydown.Raster.Scaling;
using Laydown.Raster.Separation;
using Laydown.Raster.Sheets;
using Laydown.Raster.Tiles;
using Laydown.Shop.Layers;

namespace Laydown.Output.Layers;

/// <summary>Takes the laydown of an item from the look it is printed from, instead of separating its pages.</summary>
internal static class ChosenLooks
{
    /// <summary>Takes the finished layers.</summary>
    /// <param name="layer">Layer from 0.</param>
    /// <param name="inks">Its planes.</param>
    /// <param name="limitPercent">Largest sum, percent of one full ink.</param>
    public delegate ITileSink SinkOf(int layer, IReadOnlyList<InkPlane> inks, double limitPercent);

    /// <summary>Pours every layer at the size asked for.</summary>
    /// <param name="look">The look.</param>
    /// <param name="conditionId">The print condition it is printed in.</param>
    /// <param name="rows">Rows wanted; 0 for its own.</param>
    /// <param name="columns">Columns wanted; 0 for its own.</param>
    /// <param name="optics">Optics of the inks, or null: laydowns that a solved look wants to act are sent by the curves of its inks.</param>
    /// <param name="sinkOf">Gives the place each layer goes to.</param>
    /// <param name="done">Told the share that is done, 0 to 1.</param>
    /// <param name="cancellation">Looked at before each band.</param>
    /// <returns>How many layers, or why the look cannot be printed: another print condition, changed planes, a limit that does not hold.</returns>
    public static Reading<int> Run(
        StoredLook look, string conditionId, int rows, int columns, InkOptics? optics, SinkOf sinkOf, Action<double> done, CancellationToken cancellation)
    {
        if (Checked(look, conditionId, cancellation) is { IsTaken: false } refused)
            return Reading.Refused<int>(refused.Faults);
        LookRecord record = look.Record;
        using LookPlanes planes = new(record, look.Folder);
        int first = 0;
        for (int layer = 0; layer < record.Layers.Count; layer++)
        {
            LookedLayer looked = record.Layers[layer];
            LookLayerTiles tiles = new(planes, first, looked.Inks.Count);
            int highest = tiles.Pour(
                rows == 0 ? planes.Height : rows, columns == 0 ? planes.Width : columns,
                Sending(record.How, looked, optics, sinkOf(layer, [.. looked.Inks.Select(i => new InkPlane(i.Role, i.Name))], looked.LimitPercent)), cancellation);
            if (highest > Math.Floor(looked.LimitPercent * 255 / 100))
                return Refused<int>(look, Invariant($"layer {layer + 1}"), Invariant($"{highest / 2.55:0.#} % of ink at a pixel"), Invariant($"at most {looked.LimitPercent:0.#} %"));
            first += looked.Inks.Count;
            done((layer + 1.0) / record.Layers.Count);
        }

        return Reading.Of(record.Layers.Count);
    }

    /// <summary>The look, where it may be printed in that print condition and its planes are as they were written.</summary>
    public static Reading<StoredLook> Checked(StoredLook look, string conditionId, CancellationToken cancellation)
    {
        if (!string.Equals(look.Record.ConditionId, conditionId, StringComparison.Ordinal))
        {
            return Refused<StoredLook>(
                look, "print condition", look.Record.ConditionId, Invariant($"a look made for {conditionId}, in which the item is printed"));
        }

        return Changed(look, cancellation) is { } found
            ? Refused<StoredLook>(look, LookRecord.PlanesFile, found, "the planes as they were written")
            : Reading.Of(look);
    }

    /// <summary>One layer of a look for the sheet engine: its planes, how they are sent, and its limit once more after scaling.</summary>
    /// <param name="look">The look.</param>
    /// <param name="planes">Its planes; they stay the caller's.</param>
    /// <param name="optics">Optics of the inks, or null.</param>
    /// <param name="layer">Layer from 0.</param>
    /// <param name="columns">Columns at the resolution of the press.</param>
    /// <param name="rows">Rows at the resolution of the press.</param>
    public static Reading<SheetPicture> Picture(StoredLook look, LookPlanes planes, InkOptics? optics, int layer, int columns, int rows)
    {
        LookedLayer looked = look.Record.Layers[layer];
        int first = look.Record.Layers.Take(layer).Sum(l => l.Inks.Count);
        TotalInkLimit limit = new(looked.LimitPercent, null);
        IReadOnlyList<InkCurve>? sent = SentBy(look.Record.How, looked, optics);
        return Reading.Of(new SheetPicture(
            new LookLaydown(planes, first, looked.Inks.Count), columns, rows, ScaleKernel.CatmullRom, sent is null ? [] : [new InkCurves(sent), limit], [limit]));
    }

    // What was separated stands as it is sent; what was solved stands as it is to act.
    private static ITileSink Sending(LookHow how, LookedLayer layer, InkOptics? optics, ITileSink sink) =>
        SentBy(how, layer, optics) is { } curves ? new SentSink(sink, curves, layer.LimitPercent) : sink;

    private static IReadOnlyList<InkCurve>? SentBy(LookHow how, LookedLayer layer, InkOptics? optics)
    {
        IReadOnlyList<double>?[] sent = [.. layer.Inks.Select(i => how == LookHow.Solved ? StackLights.SentFor(i.Role, optics) : null)];
        return sent.All(s => s is null) ? null : [.. sent.Select(s => s is null ? InkCurve.Straight(100) : InkCurve.Through(s, 100))];
    }

    private static string? Changed(StoredLook look, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        string path = Path.Combine(look.Folder, LookRecord.PlanesFile);
        if (!File.Exists(path))
            return "no such file";
        using FileStream stream = File.OpenRead(path);
        string sha = Convert.ToHexStringLower(SHA256.HashData(stream));
        return string.Equals(sha, look.Record.PlanesSha256, StringComparison.OrdinalIgnoreCase) ? null : "planes that were changed";
    }

    private static Reading<T> Refused<T>(StoredLook look, string field, string found, string wanted) =>
        Reading.Refused<T>(new InputFault(Invariant($"look {look.Record.LookId} of {look.Record.ItemId}"), null, field, found, wanted));
}
