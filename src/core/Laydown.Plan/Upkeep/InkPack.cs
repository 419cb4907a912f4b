using Laydown.Press.Inks;

namespace Laydown.Plan.Upkeep;

/// <summary>Ink of one lot on the shelf.</summary>
/// <param name="Lot">Number of the lot as printed on it.</param>
/// <param name="Role">Which ink.</param>
/// <param name="Ml">What is there, ml, opened bottles included.</param>
/// <param name="Expires">Last day it may be poured; null where it bears none.</param>
/// <param name="Place">Where it stands.</param>
public sealed record InkPack(string Lot, InkRole Role, double Ml, DateOnly? Expires = null, string? Place = null);
