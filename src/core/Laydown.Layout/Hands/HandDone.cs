namespace Laydown.Layout.Hands;

/// <summary>A layout after something was done to it.</summary>
/// <param name="Sheets">All sheets.</param>
/// <param name="Sheet">The sheet in hand now, from 0.</param>
/// <param name="Spot">The piece in hand now, from 0; −1 for none.</param>
public sealed record HandDone(IReadOnlyList<HandSheet> Sheets, int Sheet, int Spot);
