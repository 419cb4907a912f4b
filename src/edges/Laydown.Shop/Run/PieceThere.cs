namespace Laydown.Shop.Run;

/// <summary>The piece at one place of a sheet.</summary>
/// <param name="Name">What it is.</param>
/// <param name="ItemId">Whose.</param>
/// <param name="Copy">Which copy, from 1.</param>
/// <param name="XMm">Place in the item's printed picture, upright and unmirrored, bleed included: from its left edge, mm.</param>
/// <param name="YMm">From its lower edge, mm.</param>
public sealed record PieceThere(string Name, string ItemId, int Copy, double XMm, double YMm);
