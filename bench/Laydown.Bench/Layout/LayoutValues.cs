using Laydown.Instances.Rectangles;

namespace Laydown.Bench.Layout;

/// <summary>Published values of a folder of instances: <c>values.csv</c> in it, else <c>best-known/FOLDER.csv</c> or another table of <c>best-known</c> beside it.</summary>
internal sealed class LayoutValues
{
    private readonly IReadOnlyList<TableRow> rows;

    private LayoutValues(IReadOnlyList<TableRow> rows) => this.rows = rows;

    /// <summary>The values of a folder; none where there is no table.</summary>
    public static LayoutValues Of(string folder)
    {
        string name = Path.GetFileName(Path.TrimEndingDirectorySeparator(folder));
        string beside = Path.Combine(Path.GetDirectoryName(Path.TrimEndingDirectorySeparator(folder)) ?? folder, "best-known");
        string[] own = [Path.Combine(folder, "values.csv"), Path.Combine(beside, name + ".csv")];
        return own.FirstOrDefault(File.Exists) is string path
            ? new(Table.Read(path))
            : new(Directory.Exists(beside) ? [.. Directory.EnumerateFiles(beside, "*.csv").Order(StringComparer.Ordinal).SelectMany(Table.Read).Where(r => r.Text("family") == name)] : []);
    }

    /// <summary>The value of an instance, by the column's name; null where none is told.</summary>
    public double? Of(string instance, string column) => rows.FirstOrDefault(r => r.Text("instance") == instance)?.Value(column);

    /// <summary>The value of a class, by the column's name; null where none is told.</summary>
    public double? OfClass(string name, string column) => rows.FirstOrDefault(r => r.Text("class") == name)?.Value(column);
}
