using Laydown.Press.Inks;

namespace Laydown.Plan.Upkeep;

/// <summary>The level of a tank along the plan.</summary>
/// <param name="TankId">The tank.</param>
/// <param name="Role">Its ink.</param>
/// <param name="CapacityMl">What it holds, ml.</param>
/// <param name="LowMl">Level at which the press asks for ink, ml.</param>
/// <param name="Levels">Corners of the line, earliest first; first and last stand at the ends of the time planned.</param>
/// <param name="TopUps">When ink is poured.</param>
/// <param name="Shortages">Runs for which a full tank is too little.</param>
/// <param name="UsedMl">Ink used, ml: printed, set-up and care.</param>
public sealed record TankPlan(
    string TankId,
    InkRole Role,
    double CapacityMl,
    double LowMl,
    IReadOnlyList<TankPoint> Levels,
    IReadOnlyList<TopUp> TopUps,
    IReadOnlyList<TankShortage> Shortages,
    double UsedMl);
