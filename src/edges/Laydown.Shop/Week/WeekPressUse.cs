using Laydown.Plan.Upkeep;

namespace Laydown.Shop.Week;

/// <summary>What the week has on one press, for its upkeep.</summary>
/// <param name="Uses">The spans in which it prints, earliest first.</param>
/// <param name="Laid">Its care as the week laid it; null where the week leaves no room for care.</param>
public sealed record WeekPressUse(IReadOnlyList<PressUse> Uses, LaidCare? Laid);
