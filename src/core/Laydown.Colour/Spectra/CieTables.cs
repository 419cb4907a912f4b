using System.Globalization;

namespace Laydown.Colour.Spectra;

/// <summary>Reads the tables built into this assembly; their sources stand in Data/README.md.</summary>
internal static class CieTables
{
    /// <summary>A daylight illuminant.</summary>
    internal static Illuminant Daylight(string name) => Light(name, "illuminants-daylight-5nm.csv", heldBeyond: true);

    /// <summary>An LED illuminant.</summary>
    internal static Illuminant Led(string name) => Light(name, "illuminants-led-5nm.csv", heldBeyond: false);

    /// <summary>A fluorescent illuminant.</summary>
    internal static Illuminant Fluorescent(string name) => Light(name, "illuminants-fluorescent-5nm.csv", heldBeyond: true);

    /// <summary>The 2° observer.</summary>
    internal static ColourMatching TwoDegreeObserver() => Observer("cmf-1931-2deg-1nm.csv");

    /// <summary>The 10° observer.</summary>
    internal static ColourMatching TenDegreeObserver() => Observer("cmf-1964-10deg-1nm.csv");

    /// <summary>A column of a table by its name in the first line.</summary>
    internal static double[] Column(string table, string name)
    {
        (string[] head, List<double[]> rows) = Read(table);
        int column = Array.IndexOf(head, name);
        return [.. rows.Select(r => r[column])];
    }

    private static ColourMatching Observer(string table)
    {
        (_, List<double[]> rows) = Read(table);
        return new((int)rows[0][0], [.. rows.Select(r => r[1..])]);
    }

    private static Illuminant Light(string name, string table, bool heldBeyond)
    {
        double[] nm = Column(table, "nm");
        return new(name, (int)nm[0], (int)(nm[1] - nm[0]), Column(table, name), heldBeyond);
    }

    private static (string[] Head, List<double[]> Rows) Read(string table)
    {
        using Stream stream = typeof(CieTables).Assembly.GetManifestResourceStream(table)
            ?? throw new InvalidOperationException(Invariant($"Table {table} is not built in."));
        using StreamReader reader = new(stream);
        string[] head = reader.ReadLine()!.Split(',');
        List<double[]> rows = [];
        while (reader.ReadLine() is { Length: > 0 } line)
            rows.Add([.. line.Split(',').Select(v => double.Parse(v, CultureInfo.InvariantCulture))]);
        return (head, rows);
    }
}
