using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Shop.Run;

/// <summary>Tells what is at one place of a made sheet: every ink, how much of it, which piece and what place of its picture.</summary>
/// <param name="planes">Reads press files.</param>
/// <param name="draw">Reads means.</param>
public sealed class ReadSheet(IPressPlanes planes, DrawSheet draw)
{
    /// <summary>The place in millimetres.</summary>
    /// <param name="opened">The sheet.</param>
    /// <param name="xMm">From the left edge as it lies on the belt.</param>
    /// <param name="yMm">From the upper edge.</param>
    /// <param name="level">Level of which coverages are told.</param>
    /// <param name="cancellation">Stops.</param>
    /// <returns>What is there, or why it cannot be told: beside the sheet, no such level, a damaged file.</returns>
    public Task<Reading<SheetPlace>> AtMmAsync(OpenedSheet opened, double xMm, double yMm, int level, CancellationToken cancellation)
    {
        PressSheet sheet = opened.Sheet;
        return double.IsFinite(xMm) && double.IsFinite(yMm) && xMm >= 0 && yMm >= 0 && xMm <= sheet.SizeMm.WidthMm && yMm <= sheet.SizeMm.HeightMm
            ? AtPxAsync(opened, Math.Min(sheet.WidthPx - 1, (int)(xMm / sheet.MmPerPx)), Math.Min(sheet.HeightPx - 1, (int)(yMm / sheet.MmPerPxDown)), level, cancellation)
            : Task.FromResult(Refused(sheet, "place", Invariant($"{xMm}, {yMm} mm"), Invariant($"0, 0 to {sheet.SizeMm.WidthMm:0.#}, {sheet.SizeMm.HeightMm:0.#} mm")));
    }

    /// <summary>The place in values of level 0.</summary>
    /// <param name="opened">The sheet.</param>
    /// <param name="x">Column from 0, from the left as it lies on the belt.</param>
    /// <param name="y">Row from 0, from the top.</param>
    /// <param name="level">Level of which coverages are told.</param>
    /// <param name="cancellation">Stops.</param>
    /// <inheritdoc cref="AtMmAsync"/>
    public async Task<Reading<SheetPlace>> AtPxAsync(OpenedSheet opened, int x, int y, int level, CancellationToken cancellation)
    {
        PressSheet sheet = opened.Sheet;
        if (x < 0 || y < 0 || x >= sheet.WidthPx || y >= sheet.HeightPx)
            return Refused(sheet, "place", Invariant($"{x}, {y}"), Invariant($"0, 0 to {sheet.WidthPx - 1}, {sheet.HeightPx - 1}"));
        if (level < 0 || level >= sheet.Levels)
            return Refused(sheet, "level", Invariant($"{level}"), Invariant($"0 to {sheet.Levels - 1}"));

        Reading<byte[]> means = await draw.CoveragesAsync(opened, new(level, x >> level, y >> level, 1, 1), _ => true, cancellation);
        if (!means.IsTaken)
            return Reading.Refused<SheetPlace>(means.Faults);
        Dictionary<string, byte[]> codes = [];
        foreach (PressPlane plane in sheet.Planes.DistinctBy(p => p.FileName))
        {
            Reading<byte[]> read = planes.Codes(plane.File, new(0, plane.Reversed ? sheet.WidthPx - 1 - x : x, plane.Upended ? sheet.HeightPx - 1 - y : y, 1, 1));
            if (!read.IsTaken)
                return Reading.Refused<SheetPlace>(read.Faults);
            codes[plane.FileName] = read.Value;
        }

        PlaneThere[] inks = [.. sheet.Planes.Select((p, i) => new PlaneThere(
            p.Number, p.Layer, p.Name, p.Role, means.Value[i] / 2.55, codes[p.FileName][p.Channel], means.Value[i] / 255.0 * sheet.FullMlPerM2))];
        double xMm = (x + 0.5) * sheet.MmPerPx, yMm = (y + 0.5) * sheet.MmPerPxDown;
        return Reading.Of(new SheetPlace(
            xMm, yMm, x, y, level, sheet.IsDots, inks, inks.Sum(i => i.Percent), inks.Sum(i => i.MlPerM2), PieceAt(opened, xMm, yMm)));
    }

    private static PieceThere? PieceAt(OpenedSheet opened, double xMm, double yMm)
    {
        SheetLayout layout = opened.Run.Sheets[opened.Sheet.Number - 1];
        double fromBelow = layout.Sheet.HeightMm - yMm;
        int found = layout.Placements.ToList().FindIndex(p =>
            xMm >= p.Place.XMm && xMm <= p.Place.RightMm && fromBelow >= p.Place.YMm && fromBelow <= p.Place.TopMm);
        if (found < 0)
            return null;

        // Take the turn counter-clockwise back, then the mirroring, then add where the panel starts.
        Placement placed = layout.Placements[found];
        double across = xMm - placed.Place.XMm, up = fromBelow - placed.Place.YMm;
        double width = placed.Turned ? placed.Place.HeightMm : placed.Place.WidthMm;
        (double x, double y) = placed.QuarterTurns switch
        {
            1 => (up, placed.Place.WidthMm - across),
            2 => (placed.Place.WidthMm - across, placed.Place.HeightMm - up),
            3 => (placed.Place.HeightMm - up, across),
            _ => (across, up),
        };
        if (opened.Run.Stack.Layers[0].Mirrored != placed.BackUp)
            x = width - x;
        PlacedName name = opened.Sheet.Pieces[found];
        return new(name.Name, name.ItemId, name.Copy, x + (placed.Part?.XMm ?? 0), y + (placed.Part?.YMm ?? 0));
    }

    private static Reading<SheetPlace> Refused(PressSheet sheet, string field, string found, string wanted) =>
        Reading.Refused<SheetPlace>(new InputFault(Invariant($"run {sheet.RunId}, sheet {sheet.Number}"), null, field, found, wanted));
}
