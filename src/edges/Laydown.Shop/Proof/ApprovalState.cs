namespace Laydown.Shop.Proof;

/// <summary>How an item stands with its customer.</summary>
public enum ApprovalState
{
    /// <summary>No look was approved.</summary>
    None,

    /// <summary>A look was approved and is as it was.</summary>
    Holds,

    /// <summary>A change was asked for after the approval.</summary>
    Questioned,

    /// <summary>The ink planes are no longer those that were approved.</summary>
    Changed,
}
