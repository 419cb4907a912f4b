namespace Laydown.Measures;

/// <summary>A place on a page, sheet or belt, in millimetres from its lower left corner; x to the right, y upward.</summary>
/// <param name="XMm">Distance to the right, mm.</param>
/// <param name="YMm">Distance upward, mm.</param>
public readonly record struct PointMm(double XMm, double YMm);
