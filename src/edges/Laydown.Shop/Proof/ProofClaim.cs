namespace Laydown.Shop.Proof;

/// <summary>What a token says, its signature having been found good.</summary>
/// <param name="LinkId">The link.</param>
/// <param name="ItemId">The item.</param>
/// <param name="LookId">The look.</param>
/// <param name="Expires">When it ends.</param>
public sealed record ProofClaim(string LinkId, string ItemId, string LookId, DateTimeOffset Expires);
