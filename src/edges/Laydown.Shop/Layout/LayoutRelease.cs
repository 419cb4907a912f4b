using System.Text.Json.Serialization;

namespace Laydown.Shop.Layout;

/// <summary>That somebody stood for the layout of a run: it is not changed any more until the release is taken back.</summary>
/// <param name="By">Who released it, by name as given.</param>
/// <param name="At">When.</param>
/// <param name="Mark">Mark of the layout released.</param>
/// <param name="TakenBackBy">Who took it back; null while it holds.</param>
/// <param name="TakenBackAt">When; null while it holds.</param>
public sealed record LayoutRelease(string By, DateTimeOffset At, string Mark, string? TakenBackBy = null, DateTimeOffset? TakenBackAt = null)
{
    /// <summary>Whether it holds.</summary>
    [JsonIgnore]
    public bool Holds => TakenBackBy is null;

    /// <summary>It in one sentence.</summary>
    public override string ToString() => Holds
        ? Invariant($"Layout {LayoutMark.Short(Mark)}, released by {By} on {At:yyyy-MM-dd} at {At:HH:mm}.")
        : Invariant($"The release by {By} of {At:yyyy-MM-dd HH:mm} was taken back by {TakenBackBy} on {TakenBackAt:yyyy-MM-dd} at {TakenBackAt:HH:mm}.");
}
