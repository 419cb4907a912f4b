namespace Laydown.Press.Machines;

/// <summary>A place where a roll can hang.</summary>
/// <param name="Id">Short name.</param>
/// <param name="MaxWidthMm">Widest roll, mm.</param>
/// <param name="MaxDiameterMm">Thickest roll, mm.</param>
/// <param name="MaxMassKg">Heaviest roll, kg.</param>
/// <param name="StartMm">Where its strip starts across the belt, mm from the origin.</param>
public sealed record RollStation(string Id, double MaxWidthMm, double MaxDiameterMm, double MaxMassKg, double StartMm);
