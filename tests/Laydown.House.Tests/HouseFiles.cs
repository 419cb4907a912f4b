using System.Reflection;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace Laydown.House.Tests;

/// <summary>The checkout as text: project files, documents, sources.</summary>
internal static partial class HouseFiles
{
    public static string Root { get; } = FindRoot();

    /// <summary>Every wall of src with the walls its project file names.</summary>
    public static IReadOnlyDictionary<string, IReadOnlySet<string>> ProjectReferences() =>
        Directory.EnumerateFiles(Path.Combine(Root, "src"), "*.csproj", SearchOption.AllDirectories).ToDictionary(
            file => Path.GetFileNameWithoutExtension(file),
            file => (IReadOnlySet<string>)XDocument.Load(file).Descendants("ProjectReference")
                .Select(r => Path.GetFileNameWithoutExtension(r.Attribute("Include")!.Value.Replace('\\', '/')))
                .ToHashSet());

    /// <summary>The table of docs/architecture.md, or another text of that form.</summary>
    public static IReadOnlyDictionary<string, IReadOnlySet<string>> WallTable(string markdown) =>
        markdown.Split('\n').Where(l => l.StartsWith("| Laydown.", StringComparison.Ordinal))
            .Select(l => l.Split('|', StringSplitOptions.TrimEntries))
            .ToDictionary(
                c => c[1],
                c => (IReadOnlySet<string>)c[2].Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
                    .Where(n => n != "–").Select(n => "Laydown." + n).ToHashSet());

    /// <summary>Keys in the first column of docs/sources.md.</summary>
    public static IReadOnlySet<string> ListedSources(string markdown) =>
        markdown.Split('\n').Where(l => l.StartsWith("| ", StringComparison.Ordinal))
            .Select(l => l.Split('|', StringSplitOptions.TrimEntries)[1])
            .Where(k => k is not ("key" or "---")).ToHashSet();

    /// <summary>Keys cited in a text: capital letters or a name, with a year or number, in square brackets.</summary>
    public static IReadOnlySet<string> CitedSources(string text) =>
        CitationPattern().Matches(text).Select(m => m.Groups[1].Value).ToHashSet();

    /// <summary>All C# and Razor text below the given folders of the checkout.</summary>
    public static string SourceText(params string[] folders) => string.Join('\n', folders
        .SelectMany(f => Directory.EnumerateFiles(Path.Combine(Root, f), "*.*", SearchOption.AllDirectories))
        .Where(f => f.EndsWith(".cs", StringComparison.Ordinal) || f.EndsWith(".razor", StringComparison.Ordinal))
        .Where(f => !f.Contains("/obj/", StringComparison.Ordinal) && !f.Contains("/bin/", StringComparison.Ordinal))
        .Where(f => !f.Contains("House.Tests", StringComparison.Ordinal))
        .Select(File.ReadAllText));

    public static string Read(string path) => File.ReadAllText(Path.Combine(Root, path));

    /// <summary>The walls of src as loaded assemblies.</summary>
    public static IReadOnlyList<Assembly> Walls() => ProjectReferences().Keys
        .Select(name => name == "Laydown.Cli" ? "laydown" : name)
        .Select(Assembly.Load).ToList();

    private static string FindRoot()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "Laydown.slnx")))
            folder = Path.GetDirectoryName(folder);
        return folder ?? throw new InvalidOperationException("Found no Laydown.slnx above the test program.");
    }

    // A key stands in square brackets in a comment or a string and is made of letters, digits, hyphens and dots, with at least one digit: [Kubelka1954].
    // A character class of a pattern, such as A-Z or a-z, is none.
    [GeneratedRegex(@"\[((?![^\]]*[A-Za-z]-[Zz])[A-Z][A-Za-z]*[A-Za-z0-9.\-]*\d[A-Za-z0-9.\-]*)\]")]
    private static partial Regex CitationPattern();
}
