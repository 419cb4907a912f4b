using System.Globalization;

namespace Laydown.Core.Tests.Colour;

/// <summary>Tables of tests/data; each folder's README names their sources.</summary>
internal static class PublishedTable
{
    /// <summary>Whole path of a file of tests/data.</summary>
    public static string PathOf(string name)
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "Laydown.slnx")))
            folder = Path.GetDirectoryName(folder);
        return Path.Combine(folder ?? throw new InvalidOperationException("Laydown.slnx was not found above the tests."), "tests", "data", name);
    }

    /// <summary>Rows of numbers under the line of names.</summary>
    public static IReadOnlyList<double[]> Rows(string name) =>
        [.. File.ReadLines(PathOf(name)).Skip(1).Where(l => l.Length > 0).Select(l => l.Split(',').Select(Number).ToArray())];

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
