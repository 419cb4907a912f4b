namespace Laydown.Plan.Runs;

/// <summary>A mode that was not picked.</summary>
/// <param name="ModeId">The mode.</param>
/// <param name="Reason">Why not.</param>
public sealed record RejectedMode(string ModeId, string Reason);
