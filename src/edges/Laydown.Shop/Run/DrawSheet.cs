using Laydown.Colour.Spaces;
using Laydown.Measures;
using Laydown.Press.Inks;
using Laydown.Shop.Layers;
using Laydown.Shop.Proof;

namespace Laydown.Shop.Run;

/// <summary>Draws parts of a made sheet: all layers or one in the light, or one ink alone.</summary>
/// <remarks>A tile is 256 × 256 values of its level. As many are drawn at once as there are cores; of those that wait, more than <see cref="MostWaiting"/> are refused.</remarks>
/// <param name="planes">Reads press files.</param>
/// <param name="pictures">Writes PNG.</param>
public sealed class DrawSheet(IPressPlanes planes, ILookPictures pictures) : IDisposable
{
    /// <summary>Tiles that may wait for their turn.</summary>
    public const int MostWaiting = 256;

    /// <summary>Field of the fault that says so.</summary>
    public const string BusyField = "tiles";

    private const int PictureMostPx = 1600;
    private readonly SemaphoreSlim turns = new(Environment.ProcessorCount);
    private readonly TileShelf shelf = new(96 << 20);
    private int waiting;

    /// <summary>One tile as <see cref="TileCode"/> writes it: light by the room and by the lamp; an ink alone is told as light by the room.</summary>
    /// <param name="opened">The sheet.</param>
    /// <param name="seen">What of it.</param>
    /// <param name="level">Level; 0 has every value.</param>
    /// <param name="column">Tile from the left, from 0.</param>
    /// <param name="row">Tile from the top, from 0.</param>
    /// <param name="cancellation">Stops.</param>
    /// <returns>The tile, or why there is none: no such tile, a damaged file, too many asked for at once.</returns>
    public Task<Reading<byte[]>> TileAsync(OpenedSheet opened, SheetSeen seen, int level, int column, int row, CancellationToken cancellation) =>
        KeptAsync(opened, seen, level, column, row, "", light => TileCode.Write(light.Room, light.Lamp, light.Part.Columns, light.RoomMost, light.LampMost), cancellation);

    /// <summary>The same tile as PNG for a screen, by room light.</summary>
    /// <inheritdoc cref="TileAsync"/>
    public Task<Reading<byte[]>> TilePngAsync(OpenedSheet opened, SheetSeen seen, int level, int column, int row, CancellationToken cancellation) =>
        KeptAsync(opened, seen, level, column, row, ".png", Png, cancellation);

    /// <summary>The whole sheet as PNG, at the finest level that has at most 1600 values on its longer side.</summary>
    /// <param name="opened">The sheet.</param>
    /// <param name="seen">What of it.</param>
    /// <param name="cancellation">Stops.</param>
    public async Task<Reading<byte[]>> WholePngAsync(OpenedSheet opened, SheetSeen seen, CancellationToken cancellation)
    {
        PressSheet sheet = opened.Sheet;
        int level = 0;
        while (Math.Max(LookLevels.SideAt(sheet.WidthPx, level), LookLevels.SideAt(sheet.HeightPx, level)) > PictureMostPx)
            level++;
        Reading<PartLight> light = await InTurnAsync(
            opened, seen, new(level, 0, 0, LookLevels.SideAt(sheet.WidthPx, level), LookLevels.SideAt(sheet.HeightPx, level)), cancellation);
        return light.Then(l => Reading.Of(Png(l)));
    }

    /// <inheritdoc/>
    public void Dispose() => turns.Dispose();

    /// <summary>A part as PNG, by room light.</summary>
    internal async Task<Reading<byte[]>> PartPngAsync(OpenedSheet opened, SheetSeen seen, PressPart part, CancellationToken cancellation) =>
        (await InTurnAsync(opened, seen, part, cancellation)).Then(light => Reading.Of(Png(light)));

    /// <summary>Coverage of every plane over a part as seen on the first face, planes × rows × columns.</summary>
    internal async Task<Reading<byte[]>> CoveragesAsync(
        OpenedSheet opened, PressPart part, Func<PressPlane, bool> wanted, CancellationToken cancellation)
    {
        IReadOnlyList<PressPlane> all = opened.Sheet.Planes;
        int size = part.Rows * part.Columns;
        byte[] coverages = new byte[all.Count * size];
        foreach (IGrouping<string, PressPlane> file in all.Where(wanted).GroupBy(p => p.FileName))
        {
            PressPlane first = file.First();

            // Halving begins at the left of the file: where it rounded up, a reversed level lies up to one of its values aside.
            PressPart there = first.Reversed ? part.Reversed(LookLevels.SideAt(opened.Sheet.WidthPx, part.Level))
                : first.Upended ? part.Upended(LookLevels.SideAt(opened.Sheet.HeightPx, part.Level)) : part;
            Reading<byte[]> read = await planes.ReadAsync(first.File, there, cancellation);
            if (!read.IsTaken)
                return read;
            foreach (PressPlane plane in file)
            {
                Span<byte> into = coverages.AsSpan((plane.Number - 1) * size, size);
                read.Value.AsSpan(plane.Channel * size, size).CopyTo(into);
                for (int y = 0; plane.Reversed && y < part.Rows; y++)
                    into.Slice(y * part.Columns, part.Columns).Reverse();
                for (int y = 0; plane.Upended && y < part.Rows / 2; y++)
                    SwapRows(into, y, part.Rows - 1 - y, part.Columns);
            }
        }

        return Reading.Of(coverages);
    }

    private static void SwapRows(Span<byte> values, int one, int other, int columns)
    {
        for (int x = 0; x < columns; x++)
            (values[(one * columns) + x], values[(other * columns) + x]) = (values[(other * columns) + x], values[(one * columns) + x]);
    }

    private async Task<Reading<byte[]>> KeptAsync(
        OpenedSheet opened, SheetSeen seen, int level, int column, int row, string ending, Func<PartLight, byte[]> written, CancellationToken cancellation)
    {
        PressSheet sheet = opened.Sheet;
        int side = LookLevels.TilePx;
        if (level < 0 || level >= sheet.Levels)
            return Refused(sheet, "level", Invariant($"{level}"), Invariant($"0 to {sheet.Levels - 1}"));
        int width = LookLevels.SideAt(sheet.WidthPx, level), height = LookLevels.SideAt(sheet.HeightPx, level);
        if (column < 0 || row < 0 || column > (width - 1) / side || row > (height - 1) / side)
            return Refused(sheet, "tile", Invariant($"{column}-{row}"), Invariant($"0-0 to {(width - 1) / side}-{(height - 1) / side} at level {level}"));
        string key = Invariant($"{sheet.RunId}/{sheet.Number}/{sheet.Mark}/{seen.Word}/{level}/{column}-{row}{ending}");
        if (shelf.Find(key) is { } kept)
            return Reading.Of(kept);
        PressPart part = new(level, column * side, row * side, Math.Min(side, width - (column * side)), Math.Min(side, height - (row * side)));
        return (await InTurnAsync(opened, seen, part, cancellation)).Then(light =>
        {
            byte[] tile = written(light);
            shelf.Keep(key, tile);
            return Reading.Of(tile);
        });
    }

    private async Task<Reading<PartLight>> InTurnAsync(OpenedSheet opened, SheetSeen seen, PressPart part, CancellationToken cancellation)
    {
        if (Interlocked.Increment(ref waiting) > MostWaiting)
        {
            Interlocked.Decrement(ref waiting);
            return Reading.Refused<PartLight>(Refused(opened.Sheet, BusyField, Invariant($"more than {MostWaiting} asked for at once"), "fewer at once").Faults);
        }

        try
        {
            await turns.WaitAsync(cancellation);
            try
            {
                return await LightAsync(opened, seen, part, cancellation);
            }
            finally
            {
                turns.Release();
            }
        }
        finally
        {
            Interlocked.Decrement(ref waiting);
        }
    }

    private async Task<Reading<PartLight>> LightAsync(OpenedSheet opened, SheetSeen seen, PressPart part, CancellationToken cancellation)
    {
        Reading<byte[]> read = await CoveragesAsync(opened, part, plane => seen.Kind switch
        {
            SheetSeenKind.All => true,
            SheetSeenKind.Layer => plane.Layer == seen.Number,
            _ => plane.Number == seen.Number,
        }, cancellation);
        return read.Then(coverages =>
        {
            PartLight light = new(part, opened.Sheet.RoomMost, opened.Sheet.LampMost);
            if (seen.Kind is SheetSeenKind.All or SheetSeenKind.Layer)
                Lit(opened, coverages, light, cancellation);
            else
                Alone(opened.Sheet.Planes[seen.Number - 1].Role, seen.Kind, coverages.AsSpan((seen.Number - 1) * part.Rows * part.Columns, part.Rows * part.Columns), light);
            return Reading.Of(light);
        });
    }

    private static void Lit(OpenedSheet opened, byte[] coverages, PartLight light, CancellationToken cancellation)
    {
        PressPart part = light.Part;
        int size = part.Rows * part.Columns, line = 3 * part.Columns;
        Parallel.For(0, part.Rows, new ParallelOptions { CancellationToken = cancellation }, y =>
        {
            byte[] row = new byte[opened.Acting.Count * part.Columns];
            for (int plane = 0; plane < opened.Acting.Count; plane++)
            {
                Span<byte> into = row.AsSpan(plane * part.Columns, part.Columns);
                coverages.AsSpan((plane * size) + (y * part.Columns), part.Columns).CopyTo(into);
                for (int x = 0; opened.Acting[plane] is { } acts && x < into.Length; x++)
                    into[x] = acts[into[x]];
            }

            opened.Light.Row(row, part.Columns, light.Room.AsSpan(y * line, line), light.Lamp.AsSpan(y * line, line));
        });
    }

    private static void Alone(InkRole role, SheetSeenKind kind, ReadOnlySpan<byte> codes, PartLight light)
    {
        // Linear light of each of 256 coverages.
        float[] table = new float[3 * 256];
        (byte ground, (byte Red, byte Green, byte Blue) ink) = InkTints.Of(role);
        for (int code = 0; code < 256; code++)
        {
            if (kind == SheetSeenKind.Ink)
                table.AsSpan(3 * code, 3).Fill((float)Srgb.DecodeChannel((byte)(255 - code)));
            else
                Mixed(ground, ink, code / 255.0).CopyTo(table.AsSpan(3 * code));
        }

        for (int at = 0; at < codes.Length; at++)
            table.AsSpan(3 * codes[at], 3).CopyTo(light.Room.AsSpan(3 * at));
    }

    private static float[] Mixed(byte ground, (byte Red, byte Green, byte Blue) ink, double coverage)
    {
        double bare = (1 - coverage) * Srgb.DecodeChannel(ground);
        return [.. new[] { ink.Red, ink.Green, ink.Blue }.Select(c => (float)(bare + (coverage * Srgb.DecodeChannel(c))))];
    }

    private byte[] Png(PartLight light)
    {
        byte[] rgb = new byte[light.Room.Length];
        for (int i = 0; i < rgb.Length; i++)
            rgb[i] = Srgb.EncodeChannel(Math.Clamp(light.Room[i], 0, 1));
        return pictures.Png(new(light.Part.Columns, light.Part.Rows, rgb));
    }

    private static Reading<byte[]> Refused(PressSheet sheet, string field, string found, string wanted) =>
        Reading.Refused<byte[]>(new InputFault(Invariant($"run {sheet.RunId}, sheet {sheet.Number}"), null, field, found, wanted));
}
