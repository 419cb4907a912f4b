using Laydown.Layout.Hands;
using Laydown.Measures;
using Laydown.Plan.Runs;

namespace Laydown.Shop.Layout;

/// <summary>Does one thing to a layout by hand and says what came of it.</summary>
/// <param name="judge">Judges layouts.</param>
public sealed class EditLayout(JudgeLayout judge)
{
    /// <summary>Does it. Pure: nothing is saved.</summary>
    /// <param name="opened">The run the layout belongs to.</param>
    /// <param name="sheets">The layout before; its pieces are the run's.</param>
    /// <param name="edit">What is done.</param>
    /// <param name="measured">The run's items with their ink; null where it is not measured yet.</param>
    /// <returns>The layout after it, or why it cannot be done.</returns>
    public Reading<EditedLayout> Edit(OpenedLayout opened, IReadOnlyList<HandSheet> sheets, HandEdit edit, IReadOnlyList<PlannedItem>? measured)
    {
        ArgumentNullException.ThrowIfNull(opened);
        return LayoutEdit.Apply(sheets, edit, opened.Rules).Then(done =>
        {
            LayoutReport report = judge.Judge(opened, done.Sheets, measured);
            IReadOnlyList<Clearance> around = done.Spot < 0 ? [] : Clearances.Of(done.Sheets[done.Sheet], done.Spot, opened.Rules);
            return Reading.Of(new EditedLayout(done, around, LayoutWords.Of(opened, edit, done, report), report));
        });
    }
}
