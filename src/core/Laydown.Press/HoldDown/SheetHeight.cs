using Laydown.Measures;

namespace Laydown.Press.HoldDown;

/// <summary>The highest point a sheet may reach under the heads, and the head height that follows.</summary>
/// <param name="HighestPointMm">Thickest sheet + the higher of edge lift and hump + ink, over the belt, mm.</param>
/// <param name="LiftMm">Edge lift of the bow held by own weight alone, mm.</param>
/// <param name="LiftWithVacuumMm">Edge lift of the bow with the vacuum acting under it too, mm.</param>
/// <param name="HeatLiftMm">Edge lift with the vacuum when heat and shrinking ink bend the sheet too, mm.</param>
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
    IReadOnlyList<Figure> Figures)
{
    /// <summary>Edge lift under own weight alone with bow, shrinking ink and heat all bending the same way, mm: the upper bound of all.</summary>
    public double BoundMm { get; init; }

    /// <summary>Hump before an edge when the sheet is bowed upwards in its middle and warm above, the vacuum acting, mm.</summary>
    public double HumpMm { get; init; }

    /// <summary>What someone must see before the sheet is let under the heads, in sentences; empty where nothing hangs on the vacuum.</summary>
    public IReadOnlyList<string> ToBeSeen { get; init; } = [];
}
