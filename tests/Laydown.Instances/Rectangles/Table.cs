using System.Globalization;

namespace Laydown.Instances.Rectangles;

/// <summary>A table of values with commas between and names in its first line.</summary>
public static class Table
{
    /// <summary>Its rows; lines without a value are left out.</summary>
    /// <exception cref="InvalidDataException">The file has no line of names.</exception>
    public static IReadOnlyList<TableRow> Read(string path)
    {
        string[] lines = File.ReadAllLines(path);
        if (lines.Length == 0)
            throw new InvalidDataException(string.Create(CultureInfo.InvariantCulture, $"{Path.GetFileName(path)}: found no line; wanted a line of column names."));

        string[] names = [.. lines[0].Split(',').Select(n => n.Trim())];
        return [.. lines.Skip(1).Select((l, i) => (Text: l, Line: i + 2)).Where(l => l.Text.Trim().Length > 0)
            .Select(l => new TableRow(Path.GetFileName(path), l.Line, names, l.Text.Split(',')))];
    }
}
