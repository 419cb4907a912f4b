using System.Globalization;

namespace Laydown.Core.Tests.Layout;

/// <summary>Tables of tests/data/layout.</summary>
internal static class LayoutData
{
    public static IEnumerable<string[]> Rows(string file) => File.ReadLines(Folder(file)).Skip(1).Select(l => l.Split(','));

    /// <summary>Where a table or a folder of them is.</summary>
    public static string Folder(string name)
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "Laydown.slnx")))
            folder = Path.GetDirectoryName(folder);

        return Path.Combine(folder!, "tests", "data", "layout", name);
    }

    public static int Number(string text) => int.Parse(text, CultureInfo.InvariantCulture);
}
