using System.Collections.Concurrent;
using Laydown.Measures;
using Laydown.Optics.Looks;
using Laydown.Shop.Layers;
using Microsoft.Win32.SafeHandles;

namespace Laydown.Shop.Proof;

/// <summary>Tiles of light for a screen: made from the ink planes by the optics when they are asked for, the latest kept in memory.</summary>
/// <param name="lights">From a look to the model of light.</param>
/// <param name="levels">Planes at every size.</param>
public sealed class LookTiles(LookLights lights, LookLevels levels)
{
    private const int MostTables = 24;
    private readonly ConcurrentDictionary<string, (LightTable Table, StackLight Light)> tables = new(StringComparer.Ordinal);
    private readonly TileShelf shelf = new(96 << 20);

    /// <summary>What a screen must know before it asks for tiles.</summary>
    public Reading<LightTable> Table(LookRecord record) => Known(record).Then(k => Reading.Of(k.Table));

    /// <summary>One tile as <see cref="TileCode"/> writes it, or null where the look has no such tile.</summary>
    /// <param name="look">The look.</param>
    /// <param name="level">Level; 0 has every pixel.</param>
    /// <param name="column">Tile from the left, from 0.</param>
    /// <param name="row">Tile from the top, from 0.</param>
    /// <param name="cancellation">Stops.</param>
    public async Task<byte[]?> TileAsync(StoredLook look, int level, int column, int row, CancellationToken cancellation)
    {
        LookRecord record = look.Record;
        Reading<(LightTable Table, StackLight Light)> known = Known(record);
        if (!known.IsTaken || level < 0 || level >= known.Value.Table.Levels)
            return null;
        int width = LookLevels.SideAt(record.WidthPx, level), height = LookLevels.SideAt(record.HeightPx, level);
        if (column < 0 || row < 0 || column > (width - 1) / LookLevels.TilePx || row > (height - 1) / LookLevels.TilePx)
            return null;

        string key = Invariant($"{known.Value.Table.Mark}/{level}/{column}/{row}");
        if (shelf.Find(key) is { } kept)
            return kept;
        string path = await levels.PathAsync(look, level, cancellation);
        RectPx part = new(column * LookLevels.TilePx, row * LookLevels.TilePx,
            Math.Min(LookLevels.TilePx, width - (column * LookLevels.TilePx)), Math.Min(LookLevels.TilePx, height - (row * LookLevels.TilePx)));
        byte[] tile = Draw(path, record.PlaneCount, width, height, part, known.Value.Table, known.Value.Light, cancellation);
        shelf.Keep(key, tile);
        return tile;
    }

    private Reading<(LightTable Table, StackLight Light)> Known(LookRecord record)
    {
        string key = Invariant($"{record.ItemId}/{record.LookId}/{record.PlanesSha256}");
        if (tables.TryGetValue(key, out var known))
            return Reading.Of(known);
        return lights.Of(record).Then(optics =>
        {
            if (tables.Count >= MostTables)
                tables.Clear();
            return Reading.Of(tables[key] = LightTable.Of(record, optics));
        });
    }

    private static byte[] Draw(string path, int planes, int width, int height, RectPx part, LightTable table, StackLight light, CancellationToken cancellation)
    {
        float[] room = new float[3 * part.Width * part.Height], lamp = new float[room.Length];
        using SafeFileHandle file = File.OpenHandle(path);
        Parallel.For(0, part.Height, new ParallelOptions { CancellationToken = cancellation }, y =>
        {
            byte[] inks = new byte[planes * part.Width];
            for (int plane = 0; plane < planes; plane++)
            {
                long at = ((((long)plane * height) + part.Top + y) * width) + part.Left;
                if (RandomAccess.Read(file, inks.AsSpan(plane * part.Width, part.Width), at) != part.Width)
                    throw new InvalidDataException(Invariant($"{Path.GetFileName(path)}: shorter than {planes} × {height} × {width} bytes."));
            }

            int line = 3 * part.Width;
            light.Row(inks, part.Width, room.AsSpan(y * line, line), lamp.AsSpan(y * line, line));
        });
        return TileCode.Write(room, lamp, part.Width, table.RoomMost, table.LampMost);
    }

    private readonly record struct RectPx(int Left, int Top, int Width, int Height);
}
