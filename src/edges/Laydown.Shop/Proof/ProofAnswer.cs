namespace Laydown.Shop.Proof;

/// <summary>What a customer answered to a proof.</summary>
/// <param name="Id">Its id.</param>
/// <param name="LinkId">The link it came by.</param>
/// <param name="ItemId">The item.</param>
/// <param name="LookId">The look it speaks of.</param>
/// <param name="At">When it came.</param>
/// <param name="Verdict">What it says.</param>
/// <param name="From">Name the customer gave; may be empty. As typed: to be encoded wherever it is shown.</param>
/// <param name="Text">The comment; may be empty when approved. As typed, without control characters.</param>
/// <param name="Pin">The place it means, or null for the whole piece.</param>
/// <param name="PlanesSha256">SHA-256 of the ink planes that were shown, lower-case hex: what exactly was approved.</param>
/// <param name="Done">Whether the shop has dealt with it.</param>
public sealed record ProofAnswer(
    string Id,
    string LinkId,
    string ItemId,
    string LookId,
    DateTimeOffset At,
    ProofVerdict Verdict,
    string From,
    string Text,
    ProofPin? Pin,
    string PlanesSha256,
    bool Done);
