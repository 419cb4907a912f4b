namespace Laydown.Shop.Proof;

/// <summary>What customers said about an item.</summary>
/// <param name="All">Every answer, oldest first.</param>
/// <param name="Approved">The latest approval, or null.</param>
/// <param name="State">Whether it holds.</param>
public sealed record ProofAnswers(IReadOnlyList<ProofAnswer> All, ProofAnswer? Approved, ApprovalState State)
{
    /// <summary>Whether a look is the one that was approved, unchanged.</summary>
    public bool IsApproved(string lookId) => State == ApprovalState.Holds && Approved?.LookId == lookId;
}
