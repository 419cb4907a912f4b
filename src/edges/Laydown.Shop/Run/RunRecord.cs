namespace Laydown.Shop.Run;

/// <summary>A run with all that is known of it.</summary>
/// <param name="Run">As planned.</param>
/// <param name="State">How far it is.</param>
/// <param name="InputHash">Content hash of all inputs; equal inputs need not be made again.</param>
/// <param name="FolderName">Name of its run folder below <c>runs</c>, or null.</param>
/// <param name="Files">Files of the folder; empty before it is made.</param>
/// <param name="Failure">Why making failed, or null.</param>
public sealed record RunRecord(
    Laydown.Plan.Runs.Run Run, RunState State, string InputHash, string? FolderName, IReadOnlyList<ManifestEntry> Files, string? Failure);
