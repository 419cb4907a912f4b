using Laydown.Measures;

namespace Laydown.Shop.Run;

/// <summary>Cuts a part out of a made sheet at the pixels of its files: a picture of it, and what of every ink lies there.</summary>
/// <param name="planes">Reads press files.</param>
/// <param name="draw">Draws parts.</param>
public sealed class CropSheet(IPressPlanes planes, DrawSheet draw)
{
    /// <summary>Most pixels of a part.</summary>
    public const int MostPixels = 16_000_000;

    /// <summary>The part.</summary>
    /// <param name="opened">The sheet.</param>
    /// <param name="seen">What of it.</param>
    /// <param name="part">Where, at level 0.</param>
    /// <param name="cancellation">Stops.</param>
    /// <returns>The part, or why there is none: beside the sheet, too large, a damaged file.</returns>
    public async Task<Reading<SheetCrop>> CropAsync(OpenedSheet opened, SheetSeen seen, PressPart part, CancellationToken cancellation)
    {
        PressSheet sheet = opened.Sheet;
        bool within = part is { Left: >= 0, Top: >= 0, Columns: > 0, Rows: > 0 }
            && part.Left + (long)part.Columns <= sheet.WidthPx && part.Top + (long)part.Rows <= sheet.HeightPx;
        if (!within)
            return Refused(sheet, "part", Invariant($"{part.Columns} × {part.Rows} at {part.Left}, {part.Top}"), Invariant($"within {sheet.WidthPx} × {sheet.HeightPx}"));
        if ((long)part.Columns * part.Rows > MostPixels)
            return Refused(sheet, "part", Invariant($"{(long)part.Columns * part.Rows} pixels"), Invariant($"at most {MostPixels}"));

        part = part with { Level = 0 };
        Reading<byte[]> png = await draw.PartPngAsync(opened, seen, part, cancellation);
        if (!png.IsTaken)
            return Reading.Refused<SheetCrop>(png.Faults);
        List<CropInk> inks = [];
        foreach (PressPlane plane in sheet.Planes.Where(p => IsSeen(p, seen)))
        {
            Reading<CropInk> ink = Counted(opened, plane, part);
            if (!ink.IsTaken)
                return Reading.Refused<SheetCrop>(ink.Faults);
            inks.Add(ink.Value);
        }

        double left = part.Left * sheet.MmPerPx, top = part.Top * sheet.MmPerPxDown;
        return Reading.Of(new SheetCrop(
            part.Left, part.Top, part.Columns, part.Rows, left, top, sheet.IsDots, inks,
            [.. sheet.Pieces.Where(p => p.XMm < left + (part.Columns * sheet.MmPerPx) && p.XMm + p.WidthMm > left
                && p.YMm < top + (part.Rows * sheet.MmPerPxDown) && p.YMm + p.HeightMm > top).Select(p => Invariant($"{p.Name}, copy {p.Copy}"))],
            png.Value));
    }

    private static bool IsSeen(PressPlane plane, SheetSeen seen) => seen.Kind switch
    {
        SheetSeenKind.All => true,
        SheetSeenKind.Layer => plane.Layer == seen.Number,
        _ => plane.Number == seen.Number,
    };

    private Reading<CropInk> Counted(OpenedSheet opened, PressPlane plane, PressPart part)
    {
        PressPart there = plane.Reversed ? part.Reversed(opened.Sheet.WidthPx) : plane.Upended ? part.Upended(opened.Sheet.HeightPx) : part;
        return planes.Codes(plane.File, there).Then(codes =>
        {
            int size = part.Columns * part.Rows;
            long[] counts = new long[256];
            foreach (byte code in codes.AsSpan(plane.Channel * size, size))
                counts[code]++;
            double share = Enumerable.Range(0, 256).Sum(v => counts[v] * ShareOf(plane.File, v)) / size;
            return Reading.Of(new CropInk(
                plane.Layer, plane.Name, 100 * share, share * opened.Sheet.FullMlPerM2,
                [.. Enumerable.Range(0, 256).Where(v => counts[v] > 0).Select(v => new ValueCount(v, counts[v]))]));
        });
    }

    private static double ShareOf(PressFileAt file, int value) =>
        file.DropShares.Count == 0 ? value / 255.0 : value < file.DropShares.Count ? file.DropShares[value] : 0;

    private static Reading<SheetCrop> Refused(PressSheet sheet, string field, string found, string wanted) =>
        Reading.Refused<SheetCrop>(new InputFault(Invariant($"run {sheet.RunId}, sheet {sheet.Number}"), null, field, found, wanted));
}
