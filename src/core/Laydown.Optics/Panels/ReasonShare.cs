namespace Laydown.Optics.Panels;

/// <summary>Share of the picture that is out of reach for one reason.</summary>
/// <param name="Reason">The reason.</param>
/// <param name="Percent">Share of all pixels, percent.</param>
public sealed record ReasonShare(UnreachableReason Reason, double Percent);
