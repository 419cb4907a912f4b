namespace Laydown.Plan.Runs;

/// <summary>A press that a person took for a run in place of the one it was planned for.</summary>
/// <param name="PressId">The press taken.</param>
/// <param name="InsteadOfId">The press it was planned for before.</param>
/// <param name="By">Who took it.</param>
/// <param name="Reason">Why, in their words.</param>
public sealed record PressTaken(string PressId, string InsteadOfId, string By, string Reason)
{
    /// <summary>Such as <c>Press short-belt in place of long-belt, taken by Ada: the long belt stands.</c></summary>
    public override string ToString() => Invariant($"Press {PressId} in place of {InsteadOfId}, taken by {By}: {Reason.TrimEnd('.')}.");
}
