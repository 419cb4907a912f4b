namespace Laydown.Plan.Upkeep;

/// <summary>Ink a run takes from one tank.</summary>
/// <param name="TankId">The tank.</param>
/// <param name="SetUpMl">At its start: nozzle patterns and purging, ml.</param>
/// <param name="PrintedMl">Evenly while it prints, ml.</param>
public sealed record TankUse(string TankId, double SetUpMl, double PrintedMl);
