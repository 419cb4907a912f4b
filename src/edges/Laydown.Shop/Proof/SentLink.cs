namespace Laydown.Shop.Proof;

/// <summary>A proof link as the shop sends it.</summary>
/// <param name="Link">The link.</param>
/// <param name="Token">Its token.</param>
public sealed record SentLink(ProofLink Link, string Token)
{
    /// <summary>Path of its page.</summary>
    public string Path => Invariant($"/proof/{Token}");
}
