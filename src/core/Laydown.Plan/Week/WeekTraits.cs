namespace Laydown.Plan.Week;

/// <summary>What of a run decides how long the press is set up for it.</summary>
/// <param name="StockId">The stock.</param>
/// <param name="IsRoll">Whether it is a roll.</param>
/// <param name="ThicknessMm">Its thickness, mm.</param>
/// <param name="Layers">Its layers, as their key.</param>
/// <param name="NeedsWhite">Whether white runs.</param>
/// <param name="ModeId">The mode.</param>
/// <param name="Lay">Zones and lays on the belt, as a key.</param>
public sealed record WeekTraits(string StockId, bool IsRoll, double ThicknessMm, string Layers, bool NeedsWhite, string ModeId, string Lay);
