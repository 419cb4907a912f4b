namespace Laydown.Plan.Log;

/// <summary>Difference of a printed colour from what was wanted.</summary>
/// <param name="Patch">The patch or colour.</param>
/// <param name="DeltaE">CIEDE2000 difference, 0 to 200.</param>
/// <param name="DeltaL">Difference in L*; null where not told.</param>
/// <param name="DeltaA">Difference in a*; null where not told.</param>
/// <param name="DeltaB">Difference in b*; null where not told.</param>
public sealed record ColourReading(string Patch, double DeltaE, double? DeltaL = null, double? DeltaA = null, double? DeltaB = null);
