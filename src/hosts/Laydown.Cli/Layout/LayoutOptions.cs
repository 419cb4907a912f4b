using System.CommandLine;
using Laydown.Shop.Layout;

namespace Laydown.Cli.Layout;

/// <summary>Options that the verbs of layouts share.</summary>
internal sealed class LayoutOptions
{
    public Option<string?> Out { get; } = new("--out") { Description = "Folder the files go to (default: beside the input, named after it)." };

    public Option<string> Formats { get; } = new("--formats")
    {
        Description = "Files to write, of json, svg, dxf, pdf, with commas between.",
        DefaultValueFactory = _ => "json,svg,dxf,pdf",
    };

    /// <summary>The formats wanted, or null where one is unknown.</summary>
    public IReadOnlyList<LayoutFormat>? FormatsOf(ParseResult parsed)
    {
        string[] words = parsed.GetRequiredValue(Formats).Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        LayoutFormat[] formats = [.. words.Where(w => Enum.GetNames<LayoutFormat>().Contains(w, StringComparer.OrdinalIgnoreCase)).Select(w => Enum.Parse<LayoutFormat>(w, true))];
        return formats.Length == words.Length && formats.Length > 0 ? formats : null;
    }

    public string FolderOf(ParseResult parsed, string path) =>
        parsed.GetValue(Out) ?? Path.Combine(Path.GetDirectoryName(path) ?? "", Path.GetFileNameWithoutExtension(path) + "-layout");
}
