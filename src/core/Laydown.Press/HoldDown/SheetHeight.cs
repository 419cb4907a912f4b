using Laydown.Measures;

namespace Laydown.Press.HoldDown;

/// <summary>The highest point a sheet may reach under the heads, and the head height that follows.</summary>
/// <param name="HighestPointMm">Thickest sheet + edge lift + ink, over the belt, mm.</param>
/// <param name="LiftMm">Edge lift held by own weight alone, mm: the upper bound.</param>
/// <param name="LiftWithVacuumMm">Edge lift with the vacuum acting under it too, mm.</param>
/// <param name="HeatLiftMm">Edge lift with the vacuum when the upper side is warmer, mm.</param>
/// <param name="InkMm">Height of the ink, mm.</param>
/// <param name="HeadHeightMm">Head height over the belt, mm.</param>
/// <param name="Refusals">Why the heads must not be brought over this sheet as it stands; empty when they may.</param>
/// <param name="Figures">How each was computed.</param>
public sealed record SheetHeight(
    double HighestPointMm,
    double LiftMm,
    double LiftWithVacuumMm,
    double HeatLiftMm,
    double InkMm,
    double HeadHeightMm,
    IReadOnlyList<string> Refusals,
    IReadOnlyList<Figure> Figures);
