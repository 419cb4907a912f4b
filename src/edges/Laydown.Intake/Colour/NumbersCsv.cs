using System.Globalization;
using System.Text;
using Laydown.Measures;
using Laydown.Shop.Colour;

namespace Laydown.Intake.Colour;

/// <summary>Reads columns of numbers from CSV with a line of names; commas, semicolons or tabs between, told from the line of names.</summary>
internal static class NumbersCsv
{
    private const int MostRows = 1_000_000;
    private const int MostFaults = 20;

    /// <summary>The columns wanted, or faults with line, column, found and wanted.</summary>
    internal static Reading<NumberTable> Read(string file, byte[] bytes, IReadOnlyList<string> wanted)
    {
        string[] lines = Encoding.UTF8.GetString(bytes).TrimStart('\uFEFF').ReplaceLineEndings("\n").Split('\n');
        (int Line, string Text)[] filled = [.. lines.Select((text, i) => (i + 1, text)).Where(l => l.text.Trim().Length > 0 && l.text[0] != '#')];
        if (filled.Length < 2 || filled.Length > MostRows)
            return Refused(file, "lines", Invariant($"{filled.Length}"), Invariant($"a line of names and 1 to {MostRows} rows"));

        char separator = filled[0].Text.Contains(';', StringComparison.Ordinal) ? ';' : filled[0].Text.Contains('\t', StringComparison.Ordinal) ? '\t' : ',';
        string[] names = Cells(filled[0].Text, separator);
        int[] columns = [.. wanted.Select(w => Place(names, w))];
        InputFault[] missing = [.. wanted.Where((_, i) => columns[i] < 0)
            .Select(w => new InputFault(file, null, Invariant($"line {filled[0].Line}"), "names " + Short(string.Join(", ", names)), Invariant($"a column {w}")))];
        if (missing.Length > 0)
            return Reading.Refused<NumberTable>(missing);

        int name = Array.FindIndex(names, n => Plain(n) is "id" or "name" or "sampleid");
        List<InputFault> faults = [];
        List<NumberRow> rows = [];
        foreach ((int line, string text) in filled.Skip(1).TakeWhile(_ => faults.Count < MostFaults))
            Add(file, line, Cells(text, separator), names, columns, name, rows, faults);
        return faults.Count > 0 ? Reading.Refused<NumberTable>(faults) : Reading.Of(new NumberTable(file, wanted, rows));
    }

    private static void Add(
        string file, int line, string[] cells, string[] names, int[] columns, int name, List<NumberRow> rows, List<InputFault> faults)
    {
        if (cells.Length != names.Length)
        {
            faults.Add(new(file, null, Invariant($"line {line}"), Invariant($"{cells.Length} values"), Invariant($"{names.Length}, one for each name")));
            return;
        }

        double[] values = new double[columns.Length];
        for (int i = 0; i < columns.Length; i++)
        {
            string cell = cells[columns[i]];
            if (!double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out values[i]) || !double.IsFinite(values[i]))
                faults.Add(new(file, null, Invariant($"line {line}, column {names[columns[i]]}"), cell.Length == 0 ? "nothing" : Short(cell), "a number with a decimal point"));
        }

        rows.Add(new(line, name < 0 ? "" : cells[name], values));
    }

    // A column fits by its own name, by the name without signs between, with the spaces of the trade before it, or by the ink's letter.
    private static int Place(string[] names, string wanted)
    {
        string plain = Plain(wanted);
        int at = Array.FindIndex(names, n => Plain(n) == plain);
        if (at < 0)
            at = Array.FindIndex(names, n => Plain(n) == "lab" + plain || Plain(n) == plain + "star");
        // The ink of a layer carries the layer's number in front.
        string layer = new([.. plain.TakeWhile(char.IsAsciiDigit)]);
        return at < 0 && Letter(plain[layer.Length..]) is { } letter
            ? Array.FindIndex(names, n => Plain(n) is var p && (p == layer + letter || (layer.Length == 0 && p == "cmyk" + letter)))
            : at;
    }

    private static string? Letter(string ink) => ink switch
    {
        "cyan" => "c",
        "magenta" => "m",
        "yellow" => "y",
        "black" => "k",
        "lightcyan" => "lc",
        "lightmagenta" => "lm",
        "white" => "w",
        "orange" => "o",
        "green" => "g",
        "violet" => "v",
        "red" => "r",
        "blue" => "b",
        _ => null,
    };

    private static string Plain(string name) => new([.. name.Where(char.IsAsciiLetterOrDigit).Select(char.ToLowerInvariant)]);

    private static string[] Cells(string line, char separator) => [.. line.Split(separator).Select(c => c.Trim().Trim('"'))];

    private static string Short(string text) => text.Length <= 60 ? text : text[..60] + "…";

    private static Reading<NumberTable> Refused(string file, string field, string found, string wanted) =>
        Reading.Refused<NumberTable>(new InputFault(file, null, field, found, wanted));
}
