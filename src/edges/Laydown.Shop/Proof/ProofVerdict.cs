namespace Laydown.Shop.Proof;

/// <summary>What a customer says to a proof.</summary>
public enum ProofVerdict
{
    /// <summary>To be made like this.</summary>
    Approved,

    /// <summary>To be changed.</summary>
    Change,
}
