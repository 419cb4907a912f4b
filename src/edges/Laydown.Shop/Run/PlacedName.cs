namespace Laydown.Shop.Run;

/// <summary>A piece on a sheet with its name, from the sheet's upper left corner.</summary>
/// <param name="Name">What it is.</param>
/// <param name="ItemId">Whose.</param>
/// <param name="Copy">Which of its copies, from 1.</param>
/// <param name="XMm">Left edge, mm.</param>
/// <param name="YMm">Upper edge, mm.</param>
/// <param name="WidthMm">Width as it lies, mm.</param>
/// <param name="HeightMm">Height as it lies, mm.</param>
public sealed record PlacedName(string Name, string ItemId, int Copy, double XMm, double YMm, double WidthMm, double HeightMm);
