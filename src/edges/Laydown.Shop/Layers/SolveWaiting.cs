using Laydown.Measures;
using Laydown.Plan.Runs;
using Laydown.Shop.Build;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Layers;

/// <summary>Solves the panels that wait: day and night items that are ready and have no look yet; each is then printed from its look.</summary>
/// <param name="catalogue">What the shop has.</param>
/// <param name="store">Items.</param>
/// <param name="shelf">The looks.</param>
/// <param name="solve">Solves one.</param>
/// <param name="choose">Chooses it.</param>
public sealed class SolveWaiting(Catalogue catalogue, IShopStore store, LookShelf shelf, SolvePanel solve, ChooseLook choose)
{
    /// <summary>Solves all of them, each at the resolution of the mode it would get; one that cannot be solved holds up no other.</summary>
    /// <exception cref="OperationCanceledException">Cancelled; looks that are whole are kept.</exception>
    public async Task<SolvedPanels> SolveAsync(CancellationToken cancellation)
    {
        List<string> solved = [];
        List<InputFault> faults = [];
        foreach (ItemRecord item in (await store.OrdersAsync(cancellation)).SelectMany(o => o.Items).Where(IsWaiting))
        {
            PanelRequest request = PanelRequest.OfItem(item.Item.Id) with { Ppi = PpiOf(item), Note = "Solved in the day's work, balanced." };
            Reading<StoredLook> look = await solve.SolveAsync(request, null, cancellation);
            faults.AddRange(look.Faults);
            if (!look.IsTaken)
                continue;
            Reading<ItemRecord> chosen = await choose.ChooseAsync(item.Item.Id, look.Value.Record.LookId, cancellation);
            faults.AddRange(chosen.Faults);
            solved.Add(item.Item.Id);
        }

        return new(solved, faults);
    }

    private bool IsWaiting(ItemRecord item) =>
        item.State == ItemState.Ready && item.LookId is null && item.Item.Build.DayNight && item.Artwork is { Pages.Count: >= 2 } && shelf.List(item.Item.Id).Count == 0;

    private double PpiOf(ItemRecord item) => PressChooser.Choose(ReadyItems.Of(item.Item, item.OrderId, item.Artwork), PressRooms.Of(catalogue)) is { IsTaken: true } choice
        ? choice.Value.Press.FindMode(choice.Value.Mode.ModeId)?.ContonePpi ?? 150
        : 150;
}
