using Laydown.Shop.Orders;
using Laydown.Shop.Press;
using Laydown.Shop.Run;

namespace Laydown.Shop.Layout;

/// <summary>What the shop can do with layouts by hand.</summary>
/// <param name="Open">Opens the layout of a run.</param>
/// <param name="Judge">Judges a layout.</param>
/// <param name="Edit">Does one thing to a layout.</param>
/// <param name="Finish">Lays out anew what is not locked.</param>
/// <param name="Measure">Measures the ink of a run's items.</param>
/// <param name="Save">Gives a run another layout.</param>
/// <param name="Release">Releases the layout of a run and takes the release back.</param>
public sealed record LayoutServices(OpenLayout Open, JudgeLayout Judge, EditLayout Edit, FinishLayout Finish, MeasureLayout Measure, SaveLayout Save, ReleaseLayout Release)
{
    /// <summary>All of it for one shop.</summary>
    internal static LayoutServices Of(ShopFolder folder, Catalogue catalogue, IShopStore store, PlanRuns plan, MakeRun makeRun, SupplyOfRun? supply = null)
    {
        OpenLayout open = new(catalogue, store, plan);
        RunRequests requests = new(catalogue);
        JudgeLayout judge = new(requests);
        return new(open, judge, new(judge), new(judge), new(plan.Measure), new(open, requests, new(folder, store, makeRun)), new(catalogue, store, open, makeRun, supply));
    }
}
