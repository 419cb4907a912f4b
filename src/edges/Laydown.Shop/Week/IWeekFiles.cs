using Laydown.Measures;
using Laydown.Plan.Week;

namespace Laydown.Shop.Week;

/// <summary>Reads weeks from files of any origin, without a shop.</summary>
public interface IWeekFiles
{
    /// <summary>What a week is planned from, or every fault with file and field.</summary>
    /// <param name="path">Where it lies.</param>
    Reading<WeekProblem> Week(string path);
}
