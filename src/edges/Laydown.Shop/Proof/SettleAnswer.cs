namespace Laydown.Shop.Proof;

/// <summary>Marks an answer as dealt with, or not.</summary>
/// <param name="store">The answers.</param>
public sealed class SettleAnswer(IProofStore store)
{
    /// <summary>Marks it.</summary>
    /// <param name="itemId">The item.</param>
    /// <param name="answerId">The answer.</param>
    /// <param name="done">Whether it was dealt with.</param>
    /// <param name="cancellation">Stops before saving.</param>
    /// <returns>False when the item has no such answer.</returns>
    public Task<bool> SettleAsync(string itemId, string answerId, bool done, CancellationToken cancellation) =>
        store.SettleAsync(itemId, answerId, done, cancellation);
}
