using Laydown.Colour.Readings;
using Laydown.Formats.Patches;
using Laydown.Measures;

namespace Laydown.Formats.Readings;

/// <summary>Reads plain CSV with a line of names: id where there is one, inks, then L, a, b or X, Y, Z or wavelengths in nm.</summary>
/// <remarks>Separated by comma, semicolon or tab, told from the line of names; with a decimal comma the separator is one of the others.</remarks>
public static class ReadingsCsv
{
    /// <summary>The readings of a file, or why they cannot be taken.</summary>
    /// <param name="file">Name of the file without its folder.</param>
    /// <param name="bytes">The whole file.</param>
    public static Reading<ReadingSet> Read(string file, ReadOnlyMemory<byte> bytes)
    {
        if (PatchLimits.Refuse(file, bytes.Length) is { } size)
            return Reading.Refused<ReadingSet>(size);
        if (FileText.Decode(bytes.Span) is not { } text)
            return Refused(file, "file", "bytes that are no text", "CSV text");

        List<(int Number, string Text)> lines = [.. FileText.Lines(text).Where(l => l.Text.Trim().Length > 0 && l.Text[0] != '#')];
        if (lines.Count < 2)
            return Refused(file, "lines", Invariant($"{lines.Count} lines"), "a line of names and at least one patch");
        if (lines.Count - 1 > PatchLimits.Rows)
            return Refused(file, "lines", Invariant($"{lines.Count - 1} rows"), Invariant($"at most {PatchLimits.Rows}"));

        char separator = lines[0].Text.Contains(';', StringComparison.Ordinal) ? ';' : lines[0].Text.Contains('\t', StringComparison.Ordinal) ? '\t' : ',';
        List<string> fields = Cells(lines[0].Text, separator);
        List<PatchRow> rows = [.. lines.Skip(1).Select(l => new PatchRow(l.Number, Cells(l.Text, separator)))];
        return rows.Find(r => r.Values.Count != fields.Count) is { } misfit
            ? Refused(file, Invariant($"line {misfit.Line}"), Invariant($"{misfit.Values.Count} values"), Invariant($"{fields.Count}, one for each name"))
            : new PatchTableReader(new(file, file, MeasuredHow.Unsaid, "", fields, rows, [])).Read();
    }

    private static List<string> Cells(string line, char separator)
    {
        List<string> cells = [];
        int start = 0;
        bool quoted = false;
        for (int at = 0; at <= line.Length; at++)
        {
            if (at < line.Length && line[at] == '"')
                quoted = !quoted;
            if (at < line.Length && (quoted || line[at] != separator))
                continue;
            cells.Add(Cell(line[start..at].Trim()));
            start = at + 1;
        }

        return cells;
    }

    private static string Cell(string text) =>
        text.Length > 1 && text[0] == '"' && text[^1] == '"' ? text[1..^1].Replace("\"\"", "\"", StringComparison.Ordinal) : text;

    private static Reading<ReadingSet> Refused(string file, string field, string found, string wanted) =>
        Reading.Refused<ReadingSet>(new InputFault(file, null, field, found, wanted));
}
