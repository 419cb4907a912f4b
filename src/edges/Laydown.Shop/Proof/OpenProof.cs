namespace Laydown.Shop.Proof;

/// <summary>Follows the token of a proof link.</summary>
/// <param name="key">The key that signs.</param>
/// <param name="store">The links.</param>
/// <param name="clock">Tells the time.</param>
public sealed class OpenProof(ProofKey key, IProofStore store, TimeProvider clock)
{
    /// <summary>The link, if the token is the shop's own, not over and not withdrawn. A token that is not signed reaches no store.</summary>
    /// <param name="token">Anything at all.</param>
    /// <param name="cancellation">Stops.</param>
    public async Task<ProofOutcome> OpenAsync(string token, CancellationToken cancellation)
    {
        if (ProofToken.Read(key.Read(), token) is not { } claim)
            return ProofOutcome.Unknown;

        // The store decides as well: a link that was taken out of it, or says something else, is none.
        ProofLink? link = await store.LinkAsync(claim.LinkId, cancellation);
        if (link is null || link.ItemId != claim.ItemId || link.LookId != claim.LookId || link.Expires.ToUnixTimeSeconds() != claim.Expires.ToUnixTimeSeconds())
            return ProofOutcome.Unknown;
        ProofLinkState state = link.StateAt(clock.GetUtcNow());
        return new(state, state == ProofLinkState.Open ? link : null);
    }
}
