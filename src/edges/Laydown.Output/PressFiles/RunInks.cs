using Laydown.Formats.TiffWriting;
using Laydown.Measures;
using Laydown.Press.Inks;
using Laydown.Raster.Passes;
using Laydown.Shop.Run;

namespace Laydown.Output.PressFiles;

/// <summary>Looks into the contone and dot files of a run folder.</summary>
public sealed class RunInks : IRunInks
{
    /// <summary>Rows of a file that are averaged to one of the small picture; more would only be read longer.</summary>
    private const int RowsLookedAt = 4;

    /// <inheritdoc/>
    public Reading<(IReadOnlyList<(int Layer, InkRole Role)> Planes, BandPicture Picture)> Small(
        string folder, int sheet, IReadOnlyList<int> layers, InkSet inks, int mostRows, int mostColumns)
    {
        List<ContoneTiffReader> files = [];
        try
        {
            foreach (int layer in layers)
            {
                string? path = Directory.Exists(folder) ? Directory.GetFiles(folder, Invariant($"sheet-{sheet:00}-layer-{layer + 1}-*.tif"))
                    .Order(StringComparer.Ordinal).FirstOrDefault(IsContone) : null;
                Reading<ContoneTiffReader> file = path is null ? Refused<ContoneTiffReader>(folder, sheet, layer) : ContoneTiffReader.Open(path);
                if (!file.IsTaken)
                    return Reading.Refused<(IReadOnlyList<(int, InkRole)>, BandPicture)>(file.Faults);
                files.Add(file.Value);
            }

            return Reading.Of(Read(files, inks, mostRows, mostColumns));
        }
        catch (Exception e) when (e is IOException or InvalidDataException or UnauthorizedAccessException)
        {
            return Reading.Refused<(IReadOnlyList<(int, InkRole)>, BandPicture)>(
                new InputFault(Path.GetFileName(folder), null, "contone", e.Message, "press files that can be read"));
        }
        finally
        {
            files.ForEach(f => f.Dispose());
        }
    }

    /// <inheritdoc/>
    public Reading<(int BitsPerDot, int Stride, int Rows, int Columns, byte[] Dots)> Dots(
        string folder, string file, int firstRow, int rows, int firstColumn, int columns)
    {
        string name = Path.GetFileName(file);
        if (!string.Equals(name, file, StringComparison.Ordinal))
            return Reading.Refused<(int, int, int, int, byte[])>(new InputFault(file, null, "file", "a path", "the name of a dot file of the run"));
        return DotTiffReader.Open(Path.Combine(folder, name)).Then(dots =>
        {
            using (dots)
            {
                int across = Math.Min(columns, dots.Columns - firstColumn), down = Math.Min(rows, dots.Rows - firstRow);
                if (across < 1 || down < 1)
                {
                    return Reading.Refused<(int, int, int, int, byte[])>(new InputFault(
                        name, null, "part", Invariant($"row {firstRow}, column {firstColumn}"), Invariant($"within {dots.Rows} rows × {dots.Columns} columns")));
                }

                int stride = dots.BytesFor(across);
                byte[] bytes = new byte[stride * down];
                for (int row = 0; row < down; row++)
                    dots.ReadRow(firstRow + row, firstColumn, across, bytes.AsSpan(row * stride, stride));
                return Reading.Of((dots.BitsPerDot, stride, down, across, bytes));
            }
        });
    }

    private static bool IsContone(string path)
    {
        Reading<ContoneTiffReader> file = ContoneTiffReader.Open(path);
        if (file.IsTaken)
            file.Value.Dispose();
        return file.IsTaken;
    }

    private static (IReadOnlyList<(int Layer, InkRole Role)> Planes, BandPicture Picture) Read(
        List<ContoneTiffReader> files, InkSet inks, int mostRows, int mostColumns)
    {
        List<(int Layer, InkRole Role)> planes =
            [.. files.Index().SelectMany(f => Enumerable.Range(0, f.Item.Inks).Select(i => (f.Index, RoleOf(f.Item.InkNames.ElementAtOrDefault(i), inks))))];
        int rows = Math.Min(mostRows, files.Min(f => f.Rows)), columns = Math.Min(mostColumns, files.Min(f => f.Columns)), first = 0;
        BandPicture picture = new(planes.Count, rows, columns);
        foreach (ContoneTiffReader file in files)
        {
            byte[] line = new byte[file.Columns * file.Inks];
            for (int row = 0; row < rows; row++)
                AddRow(file, line, row, picture, first);
            first += file.Inks;
        }

        return (planes, picture);
    }

    private static void AddRow(ContoneTiffReader file, byte[] line, int row, BandPicture picture, int firstPlane)
    {
        int from = (int)((long)row * file.Rows / picture.Rows), to = Math.Max(from + 1, (int)((long)(row + 1) * file.Rows / picture.Rows));
        int step = Math.Max(1, (to - from) / RowsLookedAt), looked = 0;
        int[] counts = new int[picture.Columns];
        for (int x = 0; x < file.Columns; x++)
            counts[(int)((long)x * picture.Columns / file.Columns)]++;
        for (int at = from; at < to && looked < RowsLookedAt; at += step, looked++)
        {
            file.ReadRow(at, 0, line);
            for (int ink = 0; ink < file.Inks; ink++)
            {
                Span<float> target = picture.Row(firstPlane + ink, row);
                for (int x = 0; x < file.Columns; x++)
                    target[(int)((long)x * picture.Columns / file.Columns)] += line[(x * file.Inks) + ink];
            }
        }

        for (int ink = 0; ink < file.Inks; ink++)
        {
            Span<float> target = picture.Row(firstPlane + ink, row);
            for (int x = 0; x < target.Length; x++)
                target[x] /= 255f * counts[x] * looked;
        }
    }

    // Names of planes are those of the ink set; a second plane of the same ink carries a number behind it.
    private static InkRole RoleOf(string? name, InkSet inks) =>
        inks.Inks.Where(i => name?.StartsWith(i.Name, StringComparison.OrdinalIgnoreCase) == true).MaxBy(i => i.Name.Length)?.Role ?? InkRole.Black;

    private static Reading<T> Refused<T>(string folder, int sheet, int layer) => Reading.Refused<T>(new InputFault(
        Path.GetFileName(folder), null, Invariant($"sheet {sheet}, layer {layer + 1}"), "no contone file", "the press files of a made run"));
}
