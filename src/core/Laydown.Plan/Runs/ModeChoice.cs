namespace Laydown.Plan.Runs;

/// <summary>Which mode was picked and why.</summary>
/// <param name="ModeId">The mode.</param>
/// <param name="Reasons">Why it was picked, one sentence each.</param>
/// <param name="Rejected">Every other mode with the reason it was not picked.</param>
public sealed record ModeChoice(string ModeId, IReadOnlyList<string> Reasons, IReadOnlyList<RejectedMode> Rejected)
{
    /// <summary>Every mode of the press with all it was judged by.</summary>
    public IReadOnlyList<ModeScore> Scores { get; init; } = [];

    /// <summary>The mode that would be taken if the one picked were not there; null where none could.</summary>
    public string? RunnerUpId { get; init; }

    /// <summary>The mode the shop's own rules pick, where a person took another; else null.</summary>
    public string? ProposedId { get; init; }

    /// <summary>Who took another mode than the one proposed, and why; null where nobody did.</summary>
    public ModeOverrule? Overrule { get; init; }
}
