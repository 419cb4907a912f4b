namespace Laydown.Plan.Upkeep;

/// <summary>Ink poured into a tank.</summary>
/// <param name="TankId">The tank.</param>
/// <param name="At">When.</param>
/// <param name="Ml">How much, ml.</param>
/// <param name="RunId">The run it is for: the one that prints then, or that begins; null where it is for care.</param>
/// <param name="WhilePrinting">Whether the press prints meanwhile.</param>
/// <param name="Lots">From which lots, first to expire first.</param>
/// <param name="MissingMl">What no lot on the shelf holds, ml.</param>
/// <param name="RunPauses">Whether the run stands while it is poured.</param>
public sealed record TopUp(
    string TankId, DateTimeOffset At, double Ml, string? RunId, bool WhilePrinting, IReadOnlyList<PackDraw> Lots, double MissingMl = 0, bool RunPauses = false);
