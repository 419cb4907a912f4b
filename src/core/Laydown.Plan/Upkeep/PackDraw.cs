namespace Laydown.Plan.Upkeep;

/// <summary>Ink poured from one lot.</summary>
/// <param name="Lot">The lot.</param>
/// <param name="Ml">How much, ml.</param>
/// <param name="Expires">Its last day, or null.</param>
public sealed record PackDraw(string Lot, double Ml, DateOnly? Expires);
