namespace Laydown.Shop.Proof;

/// <summary>What a proof link does.</summary>
public enum ProofLinkState
{
    /// <summary>It shows its look and takes answers.</summary>
    Open,

    /// <summary>Its time is over.</summary>
    Expired,

    /// <summary>The shop withdrew it.</summary>
    Withdrawn,
}
