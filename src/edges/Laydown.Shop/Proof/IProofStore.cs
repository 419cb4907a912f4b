namespace Laydown.Shop.Proof;

/// <summary>Proof links and what customers answered. Every method is one transaction: done or not done, also after a kill at any time.</summary>
public interface IProofStore
{
    /// <summary>Puts a link in, or another in the place of that of the same id.</summary>
    Task SaveLinkAsync(ProofLink link, CancellationToken cancellation);

    /// <summary>One link, or null.</summary>
    Task<ProofLink?> LinkAsync(string linkId, CancellationToken cancellation);

    /// <summary>Links of an item, or of all items when null, newest first.</summary>
    Task<IReadOnlyList<ProofLink>> LinksAsync(string? itemId, CancellationToken cancellation);

    /// <summary>Puts an answer in, unless its link has had too many: counting and putting in are one transaction.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="mostInAll">Most answers of one link, this one counted.</param>
    /// <param name="mostLately">Most answers of one link since <paramref name="lately"/>, this one counted.</param>
    /// <param name="lately">From when on answers count as late.</param>
    /// <param name="cancellation">Stops before saving.</param>
    /// <returns>False when it was not put in.</returns>
    Task<bool> AddAnswerAsync(ProofAnswer answer, int mostInAll, int mostLately, DateTimeOffset lately, CancellationToken cancellation);

    /// <summary>Answers about an item, oldest first.</summary>
    Task<IReadOnlyList<ProofAnswer>> AnswersAsync(string itemId, CancellationToken cancellation);

    /// <summary>Marks an answer as dealt with or not.</summary>
    /// <returns>False when the item has no such answer.</returns>
    Task<bool> SettleAsync(string itemId, string answerId, bool done, CancellationToken cancellation);
}
