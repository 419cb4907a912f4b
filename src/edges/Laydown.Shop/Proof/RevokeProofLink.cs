using Laydown.Measures;

namespace Laydown.Shop.Proof;

/// <summary>Withdraws a proof link: from then on it shows nothing.</summary>
/// <param name="store">The links.</param>
/// <param name="clock">Tells the time.</param>
public sealed class RevokeProofLink(IProofStore store, TimeProvider clock)
{
    /// <summary>Withdraws it; a link that was withdrawn before keeps its first time.</summary>
    /// <param name="linkId">The link.</param>
    /// <param name="cancellation">Stops before saving.</param>
    public async Task<Reading<ProofLink>> RevokeAsync(string linkId, CancellationToken cancellation)
    {
        if (await store.LinkAsync(linkId, cancellation) is not { } link)
        {
            return Reading.Refused<ProofLink>(new InputFault(
                "proof link", null, "id", Invariant($"no link '{PlainWords.Cut(linkId)}'"), "the id of a link; laydown proof list shows them"));
        }

        ProofLink gone = link with { Withdrawn = link.Withdrawn ?? clock.GetUtcNow() };
        await store.SaveLinkAsync(gone, cancellation);
        return Reading.Of(gone);
    }
}
