using Laydown.Colour.Densities;
using Laydown.Formats.Patches;
using Laydown.Measures;

namespace Laydown.Formats.Readings;

/// <summary>Reads the weights of a status density from CSV, as the shop types them from its own copy of the standard.</summary>
/// <remarks>First line: <c>nm</c>, then a name for each channel, such as <c>nm,Visual,Red,Green,Blue</c>. Then a line for each wavelength
/// in even whole steps: the wavelength and a weight of 0 or more for each channel, any scale. At most 2000 lines.</remarks>
public static class DensityTableCsv
{
    private const int MostLines = 2000;

    /// <summary>The table, or why it cannot be taken.</summary>
    /// <param name="file">Name of the file without its folder; the table is called after it.</param>
    /// <param name="bytes">The whole file.</param>
    public static Reading<DensityTable> Read(string file, ReadOnlyMemory<byte> bytes)
    {
        if (PatchLimits.Refuse(file, bytes.Length) is { } size)
            return Reading.Refused<DensityTable>(size);
        List<(int Number, string Text)> lines = FileText.Decode(bytes.Span) is not { } text ? []
            : [.. FileText.Lines(text).Where(l => l.Text.Trim().Length > 0).Take(MostLines + 1)];
        if (lines.Count is < 3 or > MostLines)
            return Refused(file, "lines", Invariant($"{lines.Count}"), Invariant($"a line of names and 2 to {MostLines - 1} wavelengths"));
        string[] names = Cells(lines[0].Text);
        if (names.Length < 2 || !names[0].Equals("nm", StringComparison.OrdinalIgnoreCase) || names.Any(n => n.Length == 0))
            return Refused(file, "line 1", lines[0].Text, "nm and a name for each channel");

        double[][] rows = new double[lines.Count - 1][];
        for (int row = 0; row < rows.Length; row++)
        {
            string[] cells = Cells(lines[row + 1].Text);
            rows[row] = [.. cells.Select(c => FileNumber.TryRead(c, out double value) ? value : -1)];
            double wantedNm = row < 2 ? rows[row][0] : rows[0][0] + (row * (rows[1][0] - rows[0][0]));
            if (cells.Length != names.Length || rows[row].Any(v => v < 0) || rows[row][0] != wantedNm || rows[row][0] is < 200 or > 2500 || rows[row][0] % 1 != 0)
                return Refused(file, Invariant($"line {lines[row + 1].Number}"), lines[row + 1].Text, Invariant($"a wavelength in even steps and {names.Length - 1} weights of 0 or more"));
        }

        return Whole(file, names[1..], rows);
    }

    private static Reading<DensityTable> Whole(string file, string[] names, double[][] rows)
    {
        int step = (int)(rows[1][0] - rows[0][0]);
        if (step < 1)
            return Refused(file, "nm", Invariant($"step {step}"), "rising wavelengths");
        double[][] weights = [.. names.Select((_, channel) => rows.Select(r => r[channel + 1]).ToArray())];
        int dark = Array.FindIndex(weights, w => w.Sum() == 0);
        return dark >= 0
            ? Refused(file, names[dark], "no weight over 0", "at least one weight over 0")
            : Reading.Of(new DensityTable(Path.GetFileNameWithoutExtension(file) is { Length: > 0 } name ? name : file, (int)rows[0][0], step, names, weights));
    }

    private static string[] Cells(string line) => [.. line.Split(',').Select(c => c.Trim().Trim('"'))];

    private static Reading<DensityTable> Refused(string file, string field, string found, string wanted) =>
        Reading.Refused<DensityTable>(new InputFault(file, null, field, found, wanted));
}
