using System.Buffers.Binary;
using Laydown.Measures;
using Laydown.Output.PressFiles;

namespace Laydown.Output.Pyramids;

/// <summary>Makes the pyramid of a press file: bands on all cores, put in place in order, written beside and renamed when whole.</summary>
/// <remarks>
/// A band has 256 rows of the lowest level kept and is summed by one worker through all levels it fills; above them its one row of sums is carried on. The same bytes for any number of
/// workers. Memory is about (2 · workers + 1) · inks · 256 · columns of the lowest level, in bytes, whatever the length of the sheet.
/// </remarks>
internal sealed class PyramidMaker
{
    private const int BandLevels = 8;

    private readonly Func<Reading<IBaseLevel>> open;
    private readonly PyramidLayout layout;
    private readonly uint unit;
    private readonly int within;
    private readonly PyramidRows[] rows;
    private readonly FileStream target;
    private readonly byte[] places;

    private PyramidMaker(Func<Reading<IBaseLevel>> open, IBaseLevel first, PyramidLayout layout, FileStream target)
    {
        this.open = open;
        this.layout = layout;
        this.target = target;
        unit = first.Unit;
        within = Math.Min(layout.Levels - 1, layout.From + BandLevels);
        rows = [.. Enumerable.Range(layout.From, layout.Levels - layout.From).Select(level => new PyramidRows(layout, level))];
        places = new byte[layout.PlaceCount * PyramidFile.PlaceBytes];
    }

    /// <summary>Makes the file at <paramref name="path"/>; nothing stands there when it fails or is cancelled.</summary>
    /// <param name="open">Opens the press file, once for each worker.</param>
    /// <param name="layout">Sizes.</param>
    /// <param name="path">Where; its folder is made.</param>
    /// <param name="progress">Told the share that is done, 0 to 1.</param>
    /// <param name="cancellation">Looked at before each row of the lowest level.</param>
    /// <returns>Nothing of interest, or what is wrong with the press file.</returns>
    public static Reading<bool> Make(
        Func<Reading<IBaseLevel>> open, PyramidLayout layout, string path, IProgress<double>? progress, CancellationToken cancellation)
    {
        Reading<IBaseLevel> first = open();
        if (!first.IsTaken)
            return Reading.Refused<bool>(first.Faults);
        using IBaseLevel held = first.Value;
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        string beside = Invariant($"{path}.{Guid.NewGuid():N}.part");
        try
        {
            using (FileStream target = new(beside, FileMode.CreateNew, FileAccess.Write))
                new PyramidMaker(open, held, layout, target).Write(progress, cancellation);
            File.Move(beside, path, overwrite: true);
            return Reading.Of(true);
        }
        finally
        {
            File.Delete(beside);
        }
    }

    private void Write(IProgress<double>? progress, CancellationToken cancellation)
    {
        target.Position = PyramidFile.HeaderBytes + places.Length;
        int bands = layout.Down(layout.From), group = Environment.ProcessorCount;
        LevelCascade above = new(layout.Shape, layout.Inks, within, layout.Levels - 1, (level, row, sums) =>
        {
            if (level > within)
                Take(level, row, Codes(level, row, sums));
        });
        for (int first = 0; first < bands; first += group)
        {
            PyramidBand[] made = new PyramidBand[Math.Min(group, bands - first)];
            AllCores.Run(made.Length, () => 0, (number, _) => made[number] = Band(first + number, cancellation), cancellation);
            foreach (PyramidBand band in made)
                Place(band, above);
            progress?.Report((first + made.Length) / (double)bands);
        }

        target.Position = 0;
        target.Write(PyramidFile.Header(layout));
        target.Write(places);
        target.Flush();
    }

    private PyramidBand Band(int number, CancellationToken cancellation)
    {
        using IBaseLevel source = open().Value;
        PyramidBand band = new(layout, number, within);
        LevelCascade levels = new(layout.Shape, layout.Inks, layout.From, within, (level, row, sums) => band.Keep(level, row, Codes(level, row, sums), sums));
        int first = number * PyramidFile.TilePx, end = Math.Min(first + PyramidFile.TilePx, layout.Shape.RowsAt(layout.From));
        ulong[] line = new ulong[layout.Inks * layout.Shape.ColumnsAt(layout.From)];
        for (int row = first; row < end; row++)
        {
            cancellation.ThrowIfCancellationRequested();
            source.Sum(row, line);
            levels.Add(row, line);
        }

        band.Pack();
        return band;
    }

    private byte[] Codes(int level, int row, ulong[] sums)
    {
        byte[] codes = new byte[sums.Length];
        int columns = layout.Shape.ColumnsAt(level);
        for (int ink = 0; ink < layout.Inks; ink++)
            layout.Shape.Means(level, row, sums.AsSpan(ink * columns, columns), unit, codes.AsSpan(ink * columns, columns));
        return codes;
    }

    private void Place(PyramidBand band, LevelCascade above)
    {
        // The lowest level is whole in one band; the others are put together from several.
        foreach ((int ink, int column, byte[]? packed, byte code) in band.Tiles)
            Append(layout.From, ink, band.Number, column, packed, code);
        foreach ((int level, int row, byte[] codes) in band.Rows)
            Take(level, row, codes);
        if (band.Carried is { } sums)
            above.Add(band.Number, sums);
    }

    private void Take(int level, int row, byte[] codes)
    {
        PyramidRows whole = rows[level - layout.From];
        if (!whole.Take(row, codes))
            return;
        foreach ((int ink, int column, byte[]? packed, byte code) in whole.Packed())
            Append(level, ink, row / PyramidFile.TilePx, column, packed, code);
    }

    private void Append(int level, int ink, int tileRow, int tileColumn, byte[]? packed, byte code)
    {
        Span<byte> place = places.AsSpan(layout.PlaceOf(level, ink, tileRow, tileColumn) * PyramidFile.PlaceBytes, PyramidFile.PlaceBytes);
        BinaryPrimitives.WriteInt64LittleEndian(place, packed is null ? code : target.Position);
        BinaryPrimitives.WriteInt32LittleEndian(place[8..], packed?.Length ?? 0);
        if (packed is not null)
            target.Write(packed);
    }
}
