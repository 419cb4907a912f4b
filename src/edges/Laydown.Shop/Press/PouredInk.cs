namespace Laydown.Shop.Press;

/// <summary>Ink poured from a lot of the shelf into a tank.</summary>
/// <param name="TankId">The tank.</param>
/// <param name="Lot">Number of the lot.</param>
/// <param name="Ml">How much, ml, over 0.</param>
public sealed record PouredInk(string TankId, string Lot, double Ml);
