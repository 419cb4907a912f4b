using System.Globalization;

namespace Laydown.Instances.Rectangles;

/// <summary>An instance in the public form of two tables: <c>NAME_bins.csv</c> and <c>NAME_items.csv</c>, perhaps <c>NAME_defects.csv</c> and <c>NAME_parameters.csv</c>.</summary>
/// <param name="Name">NAME.</param>
/// <param name="Bins">Boards.</param>
/// <param name="Items">Items.</param>
/// <param name="Defects">Damaged places; most have none.</param>
/// <param name="Parameters">Further figures by name.</param>
public sealed record RectInstance(
    string Name, IReadOnlyList<RectBin> Bins, IReadOnlyList<RectItem> Items, IReadOnlyList<RectDefect> Defects, IReadOnlyDictionary<string, string> Parameters)
{
    private const string BinsEnd = "_bins.csv";

    /// <summary>Area of all wanted copies.</summary>
    public long ItemArea => Items.Sum(i => i.Area * i.Copies);

    /// <summary>Names of the instances of a folder, sorted.</summary>
    public static IReadOnlyList<string> NamesIn(string folder) =>
        [.. Directory.EnumerateFiles(folder, "*" + BinsEnd).Select(f => Path.GetFileName(f)[..^BinsEnd.Length]).Order(StringComparer.Ordinal)];

    /// <summary>Reads one instance.</summary>
    /// <exception cref="InvalidDataException">A table lacks a column or holds no number; the message names file, line, column, found and wanted.</exception>
    public static RectInstance Read(string folder, string name)
    {
        string At(string end) => Path.Combine(folder, name + end);
        IReadOnlyList<RectBin> bins = [.. Table.Read(At(BinsEnd)).Select(r =>
        {
            int width = r.Number("WIDTH"), height = r.Number("HEIGHT");
            return new RectBin(width, height, r.NumberOr("COPIES", -1) is int n and >= 0 ? n : null, r.NumberOr("COST", -1) is int c and >= 0 ? c : (double)width * height);
        })];
        IReadOnlyList<RectItem> items = [.. Table.Read(At("_items.csv")).Select(r => new RectItem(r.Number("WIDTH"), r.Number("HEIGHT"), r.NumberOr("COPIES", 1), r.NumberOr("STACK_ID", -1)))];
        IReadOnlyList<RectDefect> defects = !File.Exists(At("_defects.csv"))
            ? []
            : [.. Table.Read(At("_defects.csv")).Select(r => new RectDefect(r.Number("BIN"), r.Number("X"), r.Number("Y"), r.Number("WIDTH"), r.Number("HEIGHT")))];
        Dictionary<string, string> parameters = new(StringComparer.Ordinal);
        if (File.Exists(At("_parameters.csv")))
        {
            foreach (string[] cells in File.ReadLines(At("_parameters.csv")).Skip(1).Select(l => l.Split(',')).Where(c => c.Length >= 2))
                parameters[cells[0].Trim()] = cells[1].Trim();
        }

        return new(name, bins, items, defects, parameters);
    }

    /// <summary>A whole number of a text, in the invariant culture.</summary>
    internal static bool TryNumber(string text, out int number) => int.TryParse(text.Trim(), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out number);
}
