using System.Collections.Concurrent;
using Laydown.Formats.TiffWriting;
using Laydown.Measures;
using Laydown.Shop.Proof;
using Laydown.Shop.Run;

namespace Laydown.Output.Pyramids;

/// <summary>Press files at any size, their pyramids kept in a folder under the hash of the file they were made from.</summary>
/// <param name="folder">Where pyramids are kept; made when missing. What lies there can be made again at any time.</param>
public sealed class PressPlanes(string folder) : IPressPlanes
{
    // No part is larger than what a screen shows.
    private const int MostSide = 4096;

    private const int MostOpen = 128;

    private static readonly TimeSpan StaleAfter = TimeSpan.FromHours(6);
    private readonly ConcurrentDictionary<string, PyramidFile> opened = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Task<Reading<PyramidFile>>> making = new(StringComparer.Ordinal);
    private readonly Lock gate = new();
    private bool swept;

    /// <inheritdoc/>
    public Reading<PressFileShape> Shape(PressFileAt file) => file.IsDots
        ? DotTiffReader.Open(file.Path).Then(reader => Held(reader, DotBase.ShapeOf))
        : ContoneTiffReader.Open(file.Path).Then(reader => Held(reader, ContoneBase.ShapeOf));

    /// <inheritdoc/>
    public async Task<Reading<PressFileShape>> ReadyAsync(PressFileAt file, CancellationToken cancellation)
    {
        Reading<PressFileShape> shape = Shape(file);
        if (!shape.IsTaken || LayoutOf(file, shape.Value) is not { } layout)
            return shape;
        return (await MadeAsync(file, layout, cancellation)).Then(_ => shape);
    }

    /// <inheritdoc/>
    public async Task<Reading<byte[]>> ReadAsync(PressFileAt file, PressPart part, CancellationToken cancellation)
    {
        Reading<PressFileShape> read = Shape(file);
        if (!read.IsTaken)
            return Reading.Refused<byte[]>(read.Faults);
        PressFileShape shape = read.Value;
        Check(shape, part);
        try
        {
            if (part.Level < FromOf(file) || LayoutOf(file, shape) is not { } layout)
                return file.IsDots ? FineDots.Means(file, part, cancellation) : Codes(file, part);
            Reading<PyramidFile> made = await MadeAsync(file, layout, cancellation);
            if (!made.IsTaken)
                return Reading.Refused<byte[]>(made.Faults);
            byte[] codes = new byte[shape.Inks * part.Rows * part.Columns];
            for (int ink = 0; ink < shape.Inks; ink++)
                made.Value.Read(ink, part, codes.AsSpan(ink * part.Rows * part.Columns, part.Rows * part.Columns));
            return Reading.Of(codes);
        }
        catch (Exception e) when (e is InvalidDataException or IOException)
        {
            return Reading.Refused<byte[]>(Damage(file, e));
        }
    }

    /// <inheritdoc/>
    public Reading<byte[]> Codes(PressFileAt file, PressPart part)
    {
        try
        {
            return file.IsDots ? FineDots.Codes(file, part) : FineContone.Codes(file, part);
        }
        catch (Exception e) when (e is InvalidDataException or IOException)
        {
            return Reading.Refused<byte[]>(Damage(file, e));
        }
    }

    /// <summary>Full path of the pyramid of a file.</summary>
    internal string PathOf(PressFileAt file) => Path.Combine(
        folder, Invariant($"{Path.GetFileName(file.Sha256)}{string.Concat(DotBase.Weights(file.IsDots ? file.DropShares : [0]).Skip(1).Where(w => w > 0).Select(w => Invariant($"-{w:x}")))}.pyramid"));

    /// <summary>Sizes of the pyramid; null where the picture is so small that none is needed.</summary>
    internal static PyramidLayout? LayoutOf(PressFileAt file, PressFileShape shape)
    {
        int levels = LookLevels.CountOf(shape.Columns, shape.Rows), from = FromOf(file);
        return levels > from ? new(new(shape.Columns, shape.Rows), shape.Inks, from, levels) : null;
    }

    private static int FromOf(PressFileAt file) => file.IsDots ? 3 : 1;

    private async Task<Reading<PyramidFile>> MadeAsync(PressFileAt file, PyramidLayout layout, CancellationToken cancellation)
    {
        string path = PathOf(file);
        if (opened.TryGetValue(path, out PyramidFile? open))
            return Reading.Of(open);
        Task<Reading<PyramidFile>> busy;
        lock (gate)
        {
            Sweep();
            if (!making.TryGetValue(path, out Task<Reading<PyramidFile>>? known))
                making[path] = known = Task.Run(() => Make(file, layout, path), CancellationToken.None);
            busy = known;
        }

        return await busy.WaitAsync(cancellation);
    }

    private Reading<PyramidFile> Make(PressFileAt file, PyramidLayout layout, string path)
    {
        try
        {
            PyramidFile? there = PyramidFile.Open(path, layout);
            if (there is null)
            {
                Reading<bool> made = PyramidMaker.Make(
                    () => file.IsDots ? DotBase.Open(file.Path, file.DropShares) : ContoneBase.Open(file.Path), layout, path, null, CancellationToken.None);
                if (!made.IsTaken)
                    return Reading.Refused<PyramidFile>(made.Faults);
                there = PyramidFile.Open(path, layout) ?? throw new InvalidDataException("Pyramid: found another shape than was written.");
            }

            // What is let go here may still be read by someone: its handle closes when nobody holds it.
            if (opened.Count >= MostOpen)
                opened.Clear();
            return Reading.Of(opened[path] = there);
        }
        catch (Exception e) when (e is InvalidDataException or IOException or UnauthorizedAccessException)
        {
            return Reading.Refused<PyramidFile>(Damage(file, e));
        }
        finally
        {
            lock (gate)
                making.Remove(path);
        }
    }

    // What a killed maker left: no making lasts hours. Once for each program start.
    private void Sweep()
    {
        if (swept || !Directory.Exists(folder))
            return;
        swept = true;
        foreach (string left in Directory.GetFiles(folder, "*.part").Where(f => File.GetLastWriteTimeUtc(f) < DateTime.UtcNow - StaleAfter))
            File.Delete(left);
    }

    private static Reading<PressFileShape> Held<T>(T reader, Func<T, PressFileShape> shape)
        where T : IDisposable
    {
        using (reader)
            return Reading.Of(shape(reader));
    }

    private static void Check(PressFileShape shape, PressPart part)
    {
        Bounds.Within(part.Level, 0, LookLevels.CountOf(shape.Columns, shape.Rows) - 1);
        LevelShape level = new(shape.Columns, shape.Rows);
        Bounds.Within(part.Left, 0, level.ColumnsAt(part.Level) - 1);
        Bounds.Within(part.Top, 0, level.RowsAt(part.Level) - 1);
        Bounds.Within(part.Columns, 1, Math.Min(MostSide, level.ColumnsAt(part.Level) - part.Left));
        Bounds.Within(part.Rows, 1, Math.Min(MostSide, level.RowsAt(part.Level) - part.Top));
    }

    private static InputFault Damage(PressFileAt file, Exception e) =>
        new(Path.GetFileName(file.Path), null, "file", e.Message, "a whole press file, and room on the disk for its pyramid");
}
