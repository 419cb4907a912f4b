namespace Laydown.Plan.Log;

/// <summary>How a run was stopped.</summary>
/// <param name="Good">Good sheets since it was started, 0 or more.</param>
/// <param name="Spoiled">Spoiled sheets since it was started, 0 or more.</param>
/// <param name="Made">Sheets the press counted, good and spoiled together; null where nobody read it.</param>
/// <param name="Done">Whether the run is done; else it was broken off and will be started again.</param>
/// <param name="InkMl">Ink the press counted since it was started, all channels, ml; null where nobody read it.</param>
public sealed record RunStop(int Good, int Spoiled, int? Made, bool Done, double? InkMl = null);
