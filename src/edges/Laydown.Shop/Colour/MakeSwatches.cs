using Laydown.Measures;

namespace Laydown.Shop.Colour;

/// <summary>Makes the print-ready sheet of the shop's named colours on a print condition.</summary>
/// <param name="folder">The shop's folder.</param>
/// <param name="files">Reads.</param>
/// <param name="solve">Finds inks.</param>
/// <param name="charts">Lays sheets.</param>
public sealed class MakeSwatches(ShopFolder folder, IColourFiles files, SolveNamedColours solve, MakeChart charts)
{
    /// <summary>Makes the sheet: whole or not at all.</summary>
    /// <param name="conditionId">A fitted print condition.</param>
    /// <param name="cancellation">Stops; nothing stays then.</param>
    public Reading<MadeChart> Make(string conditionId, CancellationToken cancellation) =>
        new ConditionShelf(folder, files).Find(conditionId).Then<MadeChart>(found =>
            solve.Solve(conditionId, SeparationWish.Usual, cancellation).Then(solved => solved.Count > 0
                ? charts.Swatches(found.Condition, solved, cancellation)
                : Reading.Refused<MadeChart>(new InputFault("named-colours.json", null, "/colours", "none", "at least one named colour"))));
}
