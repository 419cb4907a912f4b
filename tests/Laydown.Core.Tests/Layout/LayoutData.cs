using System.Globalization;

namespace Laydown.Core.Tests.Layout;

/// <summary>Tables of tests/data/layout.</summary>
internal static class LayoutData
{
    public static IEnumerable<string[]> Rows(string file)
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "Laydown.slnx")))
            folder = Path.GetDirectoryName(folder);

        return File.ReadLines(Path.Combine(folder!, "tests", "data", "layout", file)).Skip(1).Select(l => l.Split(','));
    }

    public static int Number(string text) => int.Parse(text, CultureInfo.InvariantCulture);
}
