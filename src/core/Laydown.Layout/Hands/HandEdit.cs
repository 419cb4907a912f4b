namespace Laydown.Layout.Hands;

/// <summary>One thing done to a layout.</summary>
/// <param name="Verb">What.</param>
/// <param name="Sheet">Which sheet, from 0.</param>
/// <param name="Spot">Which piece on it, from 0; not looked at where the verb concerns the sheet.</param>
/// <param name="XMm">Wanted left edge, mm; null where the product is to find a place.</param>
/// <param name="YMm">Wanted lower edge, mm; null likewise.</param>
/// <param name="To">For a pull, the sheet it goes to, from 0.</param>
/// <param name="PieceId">For a put, which piece.</param>
/// <param name="ReachMm">How far a place may be shifted so that the piece comes to lie at its gap or margin, mm; 0 for exactly as told.</param>
public sealed record HandEdit(
    HandVerb Verb, int Sheet, int Spot = -1, double? XMm = null, double? YMm = null, int To = -1, string? PieceId = null, double ReachMm = 0);
