using Laydown.Measures;

namespace Laydown.Shop.Run;

/// <summary>One line of a quote.</summary>
/// <param name="ItemId">The item.</param>
/// <param name="Text">Title, size, stock, finishing, in words.</param>
/// <param name="Pieces">How many.</param>
/// <param name="Price">Price of all of them; null where the item is held back and cannot be priced.</param>
/// <param name="Note">Why it is not priced, or null.</param>
/// <param name="Because">How the price came about, in one line; null where it is not priced.</param>
/// <param name="Breaks">Prices at other quantities; null for none.</param>
public sealed record QuoteLine(string ItemId, string Text, int Pieces, Money? Price, string? Note, string? Because = null, IReadOnlyList<QuoteBreak>? Breaks = null)
{
    /// <summary>How many are made where that is more than asked for; they come in addition. Null where just as many are made, or nothing is planned.</summary>
    public int? Made { get; init; }

    /// <summary>What is made beyond what was asked for, in words; null for nothing.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public string? MadeInWords => Made is { } made ? Invariant($"{Pieces} asked for, {made} made: {made - Pieces} more {(made - Pieces == 1 ? "comes" : "come")} in addition.") : null;
}
