using System.Globalization;
using System.Text;
using Laydown.Colour.Charts;

namespace Laydown.Output.Charts;

/// <summary>Writes what a chart asked for as CGATS.17 text [CGATS17]: UTF-8, lines ending in CR LF, tabs between the values, inks in
/// percent.</summary>
internal static class ChartReference
{
    private static readonly string[] Process = ["Cyan", "Magenta", "Yellow", "Black"];

    /// <summary>Writes the file in reading order; the stream stays open.</summary>
    internal static void Write(Chart chart, IReadOnlyList<ChartSheet> sheets, Stream stream, DateTimeOffset instant)
    {
        PlacedPatch[] placed = [.. sheets.SelectMany(s => s.Patches)];
        string[] inks = [.. chart.InkNames.Select(n => Array.FindIndex(Process, p => string.Equals(p, n,
            StringComparison.OrdinalIgnoreCase)) is var at and >= 0
            ? "CMYK_" + "CMYK"[at] : Quoted(n))];
        using StreamWriter text = new(stream, new UTF8Encoding(false), leaveOpen: true) { NewLine = "\r\n" };
        text.WriteLine("CGATS.17");
        text.WriteLine("ORIGINATOR\t\"Laydown\"");
        text.WriteLine("DESCRIPTOR\t" + Quoted("Chart: " + chart.Name));
        text.WriteLine(Invariant($"CREATED\t\"{instant.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture)}\""));
        text.WriteLine("KEYWORD\t\"PAGE\"");
        text.WriteLine("KEYWORD\t\"ROW\"");
        text.WriteLine("KEYWORD\t\"COLUMN\"");
        text.WriteLine(Invariant($"NUMBER_OF_FIELDS\t{inks.Length + 4}"));
        text.WriteLine("BEGIN_DATA_FORMAT");
        text.WriteLine(string.Join('\t', ["SAMPLE_ID", "PAGE", "ROW", "COLUMN", .. inks]));
        text.WriteLine("END_DATA_FORMAT");
        text.WriteLine(Invariant($"NUMBER_OF_SETS\t{placed.Length}"));
        text.WriteLine("BEGIN_DATA");
        foreach (PlacedPatch p in placed)
        {
            IEnumerable<string> amounts = p.Patch.Inks.Select(i => (i * 100).ToString("0.####", CultureInfo.InvariantCulture));
            text.WriteLine(string.Join('\t', [p.Patch.Id, Invariant($"{p.Page}"), Invariant($"{p.Row}"), Invariant($"{p.Column}"),
                .. amounts]));
        }

        text.WriteLine("END_DATA");
    }

    // The format has no sign for a quote inside quotes; a name without blanks needs none.
    private static string Quoted(string text) => text.Any(char.IsWhiteSpace) ? '"' + text.Replace('"', '\'') + '"' : text;
}
