namespace Laydown.Shop.Proof;

/// <summary>A link by which a customer sees one look of one item, without a login, until it ends or is withdrawn.</summary>
/// <param name="Id">Its id, 10 random letters and digits.</param>
/// <param name="ItemId">The item.</param>
/// <param name="LookId">The look that is shown; a later look needs another link.</param>
/// <param name="For">Whom it was made for, in the shop's words; never shown to the customer. May be empty.</param>
/// <param name="Made">When.</param>
/// <param name="Expires">From when on it shows nothing, whole seconds.</param>
/// <param name="Withdrawn">When the shop withdrew it, or null.</param>
public sealed record ProofLink(string Id, string ItemId, string LookId, string For, DateTimeOffset Made, DateTimeOffset Expires, DateTimeOffset? Withdrawn)
{
    /// <summary>What it does at an instant.</summary>
    public ProofLinkState StateAt(DateTimeOffset now) =>
        Withdrawn is not null ? ProofLinkState.Withdrawn : now >= Expires ? ProofLinkState.Expired : ProofLinkState.Open;
}
