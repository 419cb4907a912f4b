using Laydown.Colour.Calibration;

namespace Laydown.Shop.Colour;

/// <summary>One ink as calibrated.</summary>
/// <param name="Wedge">Its wedge as read.</param>
/// <param name="Limit">Its limit with the reason.</param>
/// <param name="Curve">Its curve up to that limit.</param>
public sealed record CalibratedInk(Wedge Wedge, FoundLimit Limit, InkLinearisation Curve);
