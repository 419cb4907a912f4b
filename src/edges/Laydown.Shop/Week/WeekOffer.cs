using Laydown.Measures;
using Laydown.Plan.Week;

namespace Laydown.Shop.Week;

/// <summary>What a run would be on another press, beside what it is now.</summary>
/// <param name="ModeId">Mode there.</param>
/// <param name="Minutes">Minutes of printing and handling there, set-up apart.</param>
/// <param name="MinutesNow">The same where it stands.</param>
/// <param name="Sheets">Sheets there.</param>
/// <param name="SheetsNow">Sheets where it stands.</param>
/// <param name="Cost">What it costs there, overhead and margin apart.</param>
/// <param name="CostNow">What it costs where it stands.</param>
/// <param name="LateNow">Minutes it is late where it stands.</param>
/// <param name="There">Where it would stand best among the others, and what that makes of it and them.</param>
public sealed record WeekOffer(
    string ModeId, double Minutes, double MinutesNow, int Sheets, int SheetsNow, Money Cost, Money CostNow, int LateNow, WeekRemedy There);
