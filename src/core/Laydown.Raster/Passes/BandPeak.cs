namespace Laydown.Raster.Passes;

/// <summary>The most visible place of a simulation.</summary>
internal readonly record struct BandPeak(double DeltaL, double TimesThreshold, bool IsDark, double AlongShare, double AcrossShare);
