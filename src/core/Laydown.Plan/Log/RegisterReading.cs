namespace Laydown.Plan.Log;

/// <summary>How far two layers or faces, or print and cut, are apart.</summary>
/// <param name="AcrossMm">Across the feed, mm; signed, within ±100.</param>
/// <param name="AlongMm">Along the feed, mm; signed, within ±100.</param>
public sealed record RegisterReading(double AcrossMm, double AlongMm);
