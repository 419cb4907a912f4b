namespace Laydown.Shop.Proof;

/// <summary>What came of following a proof link.</summary>
/// <param name="State">Open, or why not; null when the token is not one of this shop's.</param>
/// <param name="Link">The link when it is open, else null: nothing of a closed link is told.</param>
public sealed record ProofOutcome(ProofLinkState? State, ProofLink? Link)
{
    /// <summary>Not a token of this shop.</summary>
    public static ProofOutcome Unknown { get; } = new(null, null);
}
