namespace Laydown.Shop.Proof;

/// <summary>A place on a piece that a customer means.</summary>
/// <param name="XMm">From the left edge of the finished piece as the viewer sees it, mm.</param>
/// <param name="YMm">From its top edge downward, mm.</param>
/// <param name="View">The view in which it was set.</param>
public sealed record ProofPin(double XMm, double YMm, PinView View);
