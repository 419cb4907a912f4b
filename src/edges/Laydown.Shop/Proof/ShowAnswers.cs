namespace Laydown.Shop.Proof;

/// <summary>What customers said about an item, and whether that still holds.</summary>
/// <param name="store">The answers.</param>
/// <param name="planes">Tells what looks are now.</param>
public sealed class ShowAnswers(IProofStore store, ProofPlanes planes)
{
    /// <summary>Everything that was said, oldest first, and the approval that counts.</summary>
    /// <param name="itemId">The item.</param>
    /// <param name="cancellation">Stops.</param>
    public async Task<ProofAnswers> ShowAsync(string itemId, CancellationToken cancellation)
    {
        IReadOnlyList<ProofAnswer> answers = await store.AnswersAsync(itemId, cancellation);
        ProofAnswer? approved = answers.LastOrDefault(a => a.Verdict == ProofVerdict.Approved);
        if (approved is null)
            return new(answers, null, ApprovalState.None);

        // What was approved is frozen by its content: other planes under the same name, or a wish to change it that came later, ask again.
        string? now = await planes.Sha256Async(itemId, approved.LookId, cancellation);
        bool asked = answers.Any(a => a.Verdict == ProofVerdict.Change && a.LookId == approved.LookId && a.At > approved.At && !a.Done);
        ApprovalState state = now != approved.PlanesSha256 ? ApprovalState.Changed : asked ? ApprovalState.Questioned : ApprovalState.Holds;
        return new(answers, approved, state);
    }
}
