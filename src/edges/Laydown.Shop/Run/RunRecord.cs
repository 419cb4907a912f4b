using System.Text.Json.Serialization;
using Laydown.Plan.Runs;
using Laydown.Shop.Layout;

namespace Laydown.Shop.Run;

/// <summary>A run with all that is known of it.</summary>
/// <param name="Run">As planned.</param>
/// <param name="State">How far it is.</param>
/// <param name="InputHash">Content hash of all inputs; equal inputs need not be made again.</param>
/// <param name="FolderName">Name of its run folder below <c>runs</c>, or null.</param>
/// <param name="Files">Files of the folder; empty before it is made.</param>
/// <param name="Failure">Why making failed, or null.</param>
/// <param name="Release">Who released its layout, and who took the release back; null where nobody did.</param>
/// <param name="FilesLayout">Mark of the layout its files were made from; null before they are made, and in runs made before it was kept.</param>
public sealed record RunRecord(
    Laydown.Plan.Runs.Run Run, RunState State, string InputHash, string? FolderName, IReadOnlyList<ManifestEntry> Files, string? Failure,
    LayoutRelease? Release = null, string? FilesLayout = null)
{
    /// <summary>Whether its files were made from another layout than the one it has.</summary>
    [JsonIgnore]
    public bool FilesAreOld => Files.Count > 0 && FilesLayout is { } made && !string.Equals(made, LayoutMark.Of(Run.Sheets), StringComparison.Ordinal);

    /// <summary>What two people measured and let go; null while nobody did. A run that is planned anew, by hand or not, must be let go anew.</summary>
    public RunRelease? LetGo { get; init; }
}
