using Laydown.Measures;

namespace Laydown.Colour.Calibration;

/// <summary>A limit of ink with what it comes from.</summary>
/// <param name="Reason">What stopped it first.</param>
/// <param name="Limit">The limit, percent of one full ink, and why in words.</param>
/// <param name="Others">What the other rules would have allowed.</param>
public sealed record FoundLimit(LimitReason Reason, Figure Limit, IReadOnlyList<Figure> Others);
