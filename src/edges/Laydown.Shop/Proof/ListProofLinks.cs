namespace Laydown.Shop.Proof;

/// <summary>Lists proof links with the tokens they were sent with.</summary>
/// <param name="key">The key that signs.</param>
/// <param name="store">The links.</param>
public sealed class ListProofLinks(ProofKey key, IProofStore store)
{
    /// <summary>Links of an item, or of all items, newest first.</summary>
    /// <param name="itemId">The item, or null for all.</param>
    /// <param name="cancellation">Stops.</param>
    public async Task<IReadOnlyList<SentLink>> ListAsync(string? itemId, CancellationToken cancellation)
    {
        IReadOnlyList<ProofLink> links = await store.LinksAsync(itemId, cancellation);
        return links.Count == 0 ? [] : [.. links.Select(l => new SentLink(l, ProofToken.Write(key.Read(), l)))];
    }
}
