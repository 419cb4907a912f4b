using Laydown.Press.Conditions;

namespace Laydown.Shop.Colour;

/// <summary>A print condition with all that is known of its colour.</summary>
/// <param name="Condition">The condition as it stands on the disk now.</param>
/// <param name="Print">Its model, or null while it has none.</param>
/// <param name="Report">The model's residuals, or null.</param>
/// <param name="Kept">Readings taken since, oldest first.</param>
public sealed record ConditionView(PrintCondition Condition, PrintModel? Print, FitReport? Report, IReadOnlyList<KeptReading> Kept);
