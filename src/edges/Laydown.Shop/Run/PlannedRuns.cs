using Laydown.Measures;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Run;

/// <summary>What came of planning.</summary>
/// <param name="Runs">Runs that were planned.</param>
/// <param name="Held">Items that were ready but could not be planned; their faults say why.</param>
/// <param name="Dissolved">Ids of planned runs that were dissolved because an item of theirs changed.</param>
public sealed record PlannedRuns(IReadOnlyList<RunRecord> Runs, IReadOnlyList<ItemRecord> Held, IReadOnlyList<string> Dissolved)
{
    /// <summary>Why items were held.</summary>
    public IEnumerable<InputFault> Faults => Held.SelectMany(i => i.Faults);
}
