using Laydown.Layout.Hands;
using Laydown.Layout.Search;
using Laydown.Plan.Runs;

namespace Laydown.Shop.Layout;

/// <summary>Lays out anew what is not locked.</summary>
/// <param name="judge">Judges layouts.</param>
public sealed class FinishLayout(JudgeLayout judge)
{
    /// <summary>Searches until it is stopped, the iterations are used up, or nothing better is possible.</summary>
    /// <param name="opened">The run it belongs to.</param>
    /// <param name="sheets">The layout so far.</param>
    /// <param name="search">Seed and iterations.</param>
    /// <param name="measured">The run's items with their ink; null where it is not measured yet.</param>
    /// <param name="better">Told every improved layout, the first within one packing.</param>
    /// <param name="stop">Ends the search.</param>
    /// <returns>The best layout found.</returns>
    public IReadOnlyList<HandSheet> Finish(
        OpenedLayout opened, IReadOnlyList<HandSheet> sheets, SearchRules search, IReadOnlyList<PlannedItem>? measured, Action<FoundLayout>? better,
        CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(opened);
        int number = 0;
        return FinishRest.Solve(
            sheets, opened.Rules, search, better is null ? null : found => better(new(++number, found, judge.Judge(opened, found, measured))), stop);
    }
}
