namespace Laydown.Shop.Run;

/// <summary>Prices of an item at several quantities.</summary>
/// <param name="ItemId">The item.</param>
/// <param name="Title">What it is.</param>
/// <param name="Breaks">The quantities, in the order asked for.</param>
public sealed record ItemBreaks(string ItemId, string Title, IReadOnlyList<QuoteBreak> Breaks);
