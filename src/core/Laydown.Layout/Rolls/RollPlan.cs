using Laydown.Layout.Sheets;

namespace Laydown.Layout.Rolls;

/// <summary>Pieces on one roll, or on two side by side.</summary>
/// <param name="Strips">Rolls from the left; empty where nothing could be placed.</param>
/// <param name="Unplaced">Pieces that found no place; empty when all are placed.</param>
/// <param name="AdvanceMm">Length that the press advances, the longer of two, mm.</param>
/// <param name="Cost">Rolls and advance in the unit of the prices; where there are none, square metres of roll.</param>
/// <param name="WasteM2">Roll under no piece: leads, gaps, margins, and what a shorter roll beside a longer one advances for nothing, m².</param>
public sealed record RollPlan(IReadOnlyList<RollStrip> Strips, IReadOnlyList<UnplacedPiece> Unplaced, double AdvanceMm, double Cost, double WasteM2)
{
    /// <summary>Ids of the rolls that lie on the press, from the left; also one that nothing lies on.</summary>
    public IReadOnlyList<string> Rolls { get; init; } = [];
}
