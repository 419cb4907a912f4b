using Laydown.Colour.Charts;
using Laydown.Formats.PdfWriting;
using Laydown.Measures;
using Laydown.Output.PressFiles;

namespace Laydown.Output.Charts;

/// <summary>Writes the folder of a chart whole or not at all: a contone TIFF for each sheet, one PDF, one reference file.</summary>
/// <remarks>The same chart gives the same bytes: the instant written into the files is the caller's.</remarks>
public static class ChartFolder
{
    /// <summary>Resolution of the contone files unless asked otherwise, ppi: edges to a quarter of a millimetre.</summary>
    public const double UsualPpi = 100;

    /// <summary>Largest sheet, pixels: 2 GiB of one ink.</summary>
    public const long MostPixels = int.MaxValue;

    /// <summary>Writes the folder; an earlier one of the same name gives way when the new one is whole.</summary>
    /// <param name="chart">The chart.</param>
    /// <param name="sheets">Its sheets.</param>
    /// <param name="chartsFolder">Folder that holds the folders of charts.</param>
    /// <param name="scratchFolder">Scratch on the same file system.</param>
    /// <param name="id">Name of the new folder; a plain name.</param>
    /// <param name="instant">Instant written into the files.</param>
    /// <param name="ppi">Resolution of the contone files, 25 to 1200 ppi.</param>
    /// <param name="cancel">Stops the writing; nothing stays then.</param>
    /// <returns>Full paths of the files: reference, PDF, TIFFs in the order of the sheets; or a fault of disk or size.</returns>
    /// <exception cref="ArgumentException">The id is no plain name, there is no sheet, or the resolution is outside its range.</exception>
    public static Reading<IReadOnlyList<string>> Write(
        Chart chart, IReadOnlyList<ChartSheet> sheets, string chartsFolder, string scratchFolder, string id,
        DateTimeOffset instant, double ppi, CancellationToken cancel)
    {
        Bounds.NotEmpty(sheets);
        Bounds.Within(ppi, 25, 1200);
        foreach (ChartSheet sheet in sheets)
        {
            double pixels = sheet.Size.WidthMm / 25.4 * ppi * (sheet.Size.HeightMm / 25.4 * ppi);
            if (pixels > MostPixels)
            {
                return Reading.Refused<IReadOnlyList<string>>(new InputFault(id, sheet.Page, "resolution",
                    Invariant($"{ppi} ppi on {sheet.Size}"), "a smaller sheet or a lower resolution"));
            }
        }

        string file = id;
        try
        {
            using RunFolder folder = new(scratchFolder, id);
            folder.Create();
            List<string> names = [];
            void Make(string name, Action<Stream> write)
            {
                cancel.ThrowIfCancellationRequested();
                file = name;
                using FileStream stream = new(Path.Combine(folder.FilesPath, name), FileMode.CreateNew, FileAccess.ReadWrite);
                write(stream);
                names.Add(name);
            }

            Make(id + ".txt", s => ChartReference.Write(chart, sheets, s, instant));
            Make(id + ".pdf", s => ChartPdf.Write(chart, sheets, s, instant));
            foreach (ChartSheet sheet in sheets)
            {
                foreach ((Chart part, ChartSheet its, string name) in PartsOf(chart, sheet))
                    Make(Invariant($"{id}-{sheet.Page}{name}.tif"), s => ChartTiff.Write(part, its, s, ppi, instant, cancel));
            }

            file = id;
            folder.Publish(chartsFolder, id);
            return Reading.Of<IReadOnlyList<string>>([.. names.Select(n => Path.Combine(chartsFolder, id, n))]);
        }
        catch (Exception e) when (DiskFault.IsFault(e))
        {
            return Reading.Refused<IReadOnlyList<string>>(DiskFault.Of(e, file, chartsFolder));
        }
    }

    /// <summary>A sheet layer by layer in print order, each with the end of its file's name; a chart without layers is one part. Marks and
    /// words stand in the last layer.</summary>
    internal static IEnumerable<(Chart Chart, ChartSheet Sheet, string Name)> PartsOf(Chart chart, ChartSheet sheet) => chart.Layers.Count == 0
        ? [(chart, sheet, "")]
        : chart.Layers.Select((layer, i) => (layer.Of(chart), layer.Of(sheet, marked: i == chart.Layers.Count - 1),
            Invariant($"-layer-{i + 1}-{layer.Name.Replace(' ', '-')}")));

    /// <summary>The inks as separations with what stands for them on a screen.</summary>
    internal static PdfSpot[] Spots(Chart chart) => [.. chart.InkNames.Select(SpotOf)];

    /// <summary>The ink that marks and words are printed in: black, or the last of the inks.</summary>
    internal static int MarkInk(Chart chart)
    {
        int black = chart.InkNames.ToList().FindIndex(n => string.Equals(n, "Black", StringComparison.OrdinalIgnoreCase));
        return black >= 0 ? black : chart.InkNames.Count - 1;
    }

    // Stand-ins for a screen only, by eye; the inks themselves are what is read.
    private static PdfSpot SpotOf(string name) => name.ToUpperInvariant().Replace(" ", "", StringComparison.Ordinal) switch
    {
        "CYAN" => new("Cyan", 1, 0, 0, 0),
        "MAGENTA" => new("Magenta", 0, 1, 0, 0),
        "YELLOW" => new("Yellow", 0, 0, 1, 0),
        "BLACK" => new("Black", 0, 0, 0, 1),
        "LIGHTCYAN" => new(name, 0.35, 0, 0, 0),
        "LIGHTMAGENTA" => new(name, 0, 0.35, 0, 0),
        "ORANGE" => new(name, 0, 0.6, 1, 0),
        "RED" => new(name, 0, 1, 1, 0),
        "GREEN" => new(name, 0.9, 0, 1, 0),
        "BLUE" or "VIOLET" => new(name, 0.9, 0.9, 0, 0),
        "WHITE" => new(name, 0.08, 0, 0, 0.08),
        "CLEAR" => new(name, 0, 0, 0.08, 0.05),
        _ => new(name, 0.2, 0.2, 0.2, 0.3),
    };
}
