using Laydown.Geometry.Shapes;
using Laydown.Measures;
using Laydown.Plan.Runs;
using Laydown.Shop.Build;
using Laydown.Shop.Colour;
using Laydown.Shop.Layers;
using Laydown.Shop.Layout;
using Laydown.Shop.Log;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Run;

/// <summary>Puts ready items into runs: forms groups, measures their ink, lays them out, plans each run and saves it.</summary>
/// <param name="catalogue">What the shop has.</param>
/// <param name="store">What it remembers.</param>
/// <param name="measure">Measures the ink of a piece.</param>
/// <param name="looks">Looks of the shop; null where no item is printed from one.</param>
/// <param name="learn">Learns from the log; null where times stand as reckoned.</param>
public sealed class PlanRuns(Catalogue catalogue, IShopStore store, IInkMeasure measure, LookShelf? looks = null, LearnEstimates? learn = null)
{
    /// <summary>Measures the ink of a piece.</summary>
    internal IInkMeasure Measure => measure;

    /// <summary>Looks of the shop; null where no item is printed from one.</summary>
    internal LookShelf? Looks => looks;

    /// <summary>
    /// Plans all ready items. Run ids are <c>R-yyyymmdd-NN</c>, counted up from the last of that day, so equal shops give equal ids.
    /// Planned runs that lost an item, because it changed, are dissolved first and their other items planned anew.
    /// An item that cannot be planned is stopped with its faults; the others go on.
    /// </summary>
    /// <exception cref="OperationCanceledException">Cancelled; nothing of this planning is saved but what was dissolved.</exception>
    public async Task<PlannedRuns> PlanAsync(DateOnly today, CancellationToken cancellation)
    {
        IReadOnlyList<string> dissolved = await DissolveAsync(cancellation);
        List<ItemRecord> ready = [.. (await store.OrdersAsync(cancellation)).SelectMany(o => o.Items).Where(i => i.State == ItemState.Ready)];
        Desk desk = new(ready.ToDictionary(i => i.Item.Id, StringComparer.Ordinal), await NumbersAsync(today, cancellation), []);
        await FillAsync(desk, ready, cancellation);

        if (desk.Items.Count > 0)
            await store.SaveItemsAsync([.. desk.Items.Values], cancellation);
        if (desk.Runs.Count > 0)
            await store.SaveRunsAsync(desk.Runs, ItemState.Planned, cancellation);
        return new(desk.Runs, [.. desk.Items.Values.Where(i => i.State == ItemState.Stopped)], dissolved);
    }

    /// <summary>Runs of items as they would be planned by themselves; nothing is saved.</summary>
    /// <returns>The runs, and items that cannot be planned with their faults.</returns>
    internal async Task<PlannedRuns> TryAsync(IReadOnlyList<ItemRecord> items, CancellationToken cancellation)
    {
        List<ItemRecord> ready = [.. items.Select(i => i with { State = ItemState.Ready, RunId = null, Faults = [] })];
        Desk desk = new(ready.ToDictionary(i => i.Item.Id, StringComparer.Ordinal), new("try-", 0), []);
        await FillAsync(desk, ready, cancellation);
        return new(desk.Runs, [.. desk.Items.Values.Where(i => i.State == ItemState.Stopped)], []);
    }

    /// <summary>A run's items planned anew for one press alone, under the run's own id; nothing is saved.</summary>
    /// <returns>The run with the layers of its items on that press, or why it cannot be one run there.</returns>
    internal async Task<Reading<PlannedOnPress>> OnPressAsync(
        string runId, IReadOnlyList<ItemRecord> items, Laydown.Press.Machines.PressDescription press, IInkMeasure ink, CancellationToken cancellation)
    {
        List<ItemRecord> ready = [.. items.Select(i => i with { State = ItemState.Ready, RunId = null, Faults = [] })];
        Desk desk = new(ready.ToDictionary(i => i.Item.Id, StringComparer.Ordinal), new(runId, 0, exactly: true), []) { Measure = ink };
        await FillAsync(desk, ready, cancellation, PressRooms.Of(catalogue) with { Presses = [press] });
        IReadOnlyList<InputFault> faults = [.. desk.Items.Values.Where(i => i.State == ItemState.Stopped).SelectMany(i => i.Faults).Distinct()];
        if (faults.Count > 0)
            return Reading.Refused<PlannedOnPress>(faults);
        return desk.Runs is [var one]
            ? Reading.Of(new PlannedOnPress(one.Run, [.. desk.Items.Values]))
            : Reading.Refused<PlannedOnPress>(new InputFault(
                Invariant($"run {runId}"), null, "press", Invariant($"{press.Name}, where its items take {desk.Runs.Count} runs: modes or layers differ there"), "a press on which they stay one run"));
    }

    /// <summary>What times are corrected by; null where they stand as reckoned.</summary>
    internal async Task<Laydown.Plan.Log.EstimateModel?> LearntAsync(CancellationToken cancellation) =>
        learn is null ? null : await learn.ForPlansAsync(catalogue.Rates, cancellation);

    private async Task FillAsync(Desk desk, List<ItemRecord> ready, CancellationToken cancellation, PressRoom? room = null)
    {
        desk.Learnt = await LearntAsync(cancellation);
        FormedRuns formed = RunFormer.Form([.. ready.Select(i => ReadyItems.Of(i.Item, i.OrderId, i.Artwork))], room ?? PressRooms.Of(catalogue));
        foreach (UnformedItem item in formed.Unformed)
            desk.Hold(item.Ready.Item.Id, item.Faults);
        StockSizes sizes = new(catalogue.Stocks, id => ItemContours.Of(desk.Items[id]));
        RollWidths widths = new(catalogue.Stocks, id => ItemContours.Of(desk.Items[id]));
        foreach (FormedRun group in formed.Runs.SelectMany(ByGrain)
            .SelectMany(g => sizes.Split(g, cancellation)).SelectMany(g => BlankLanes.Split(g, cancellation)).Select(g => widths.Chosen(g, cancellation)))
            await PlanAsync(group, desk, cancellation);
    }

    private async Task<Numbers> NumbersAsync(DateOnly today, CancellationToken cancellation)
    {
        string day = Invariant($"R-{today:yyyyMMdd}-");
        int last = (await store.RunsAsync(cancellation)).Where(r => r.Run.Id.StartsWith(day, StringComparison.Ordinal))
            .Select(r => int.TryParse(r.Run.Id.AsSpan(day.Length), out int n) ? n : 0)
            .DefaultIfEmpty(0).Max();
        return new(day, last);
    }

    // Pieces that must lie along the flutes and pieces that must lie across them cannot share a drawing of the sheet.
    private static IEnumerable<FormedRun> ByGrain(FormedRun run) => run.Items
        .GroupBy(i => i.Ready.Item.UpAlongGrain is false && run.Stock.Grain != Laydown.Press.Stocks.GrainDirection.None)
        .Select(g => run with { Items = [.. g] });

    private async Task PlanAsync(FormedRun group, Desk desk, CancellationToken cancellation)
    {
        // What cannot be measured is held, and the run goes on without it.
        List<PlannedItem> measured = [];
        foreach (FormedItem item in group.Items)
        {
            ItemRecord record = desk.Items[item.Ready.Item.Id] with { Stack = item.Stack };
            desk.Items[record.Item.Id] = record;
            Reading<IReadOnlyList<LayerInk>> ink = await (desk.Measure ?? measure).MeasureAsync(
                record, group.Condition, group.InkSet, RunContexts.ProfilePath(catalogue, group.Condition), cancellation);
            if (ink.IsTaken)
                measured.Add(Planned(item, ink.Value, record));
            else
                desk.Hold(record.Item.Id, ink.Faults);
        }

        LaidOut? laid = Lay(group, measured, desk, cancellation);
        if (laid is null)
            return;
        string id = desk.Numbers.Next();
        RunRequest request = new(
            id, group.Press, group.InkSet, group.Stock, group.Condition, catalogue.Rates, group.Stack, measured, laid.Sheets, laid.Belt)
        {
            Bands = BandScores.Of,
            Learnt = desk.Learnt,
            Beside = [.. group.Beside.Where(s => s.Id != group.Stock.Id && laid.Sheets.Any(l => l.StockId == s.Id))],
            MinutesLeft = DueTimes.MinutesLeft(catalogue, id, group.Press.Id, measured.Min(m => m.Item.Due)),
        };
        Reading<Laydown.Plan.Runs.Run> planned = RunPlanner.Plan(request);
        if (planned.IsTaken)
            desk.Runs.Add(new(planned.Value, RunState.Waiting, await HashAsync(planned.Value, measured, desk, cancellation), null, [], null));
        else
            measured.ForEach(i => desk.Hold(i.Item.Id, planned.Faults));
    }

    /// <summary>Lays out what is left in <paramref name="measured"/>; an item with a piece that finds no place is taken out and the rest laid out again.</summary>
    private static LaidOut? Lay(FormedRun group, List<PlannedItem> measured, Desk desk, CancellationToken cancellation)
    {
        while (measured.Count > 0)
        {
            HashSet<string> ids = [.. measured.Select(m => m.Item.Id)];
            FormedRun left = group with { Items = [.. group.Items.Where(i => ids.Contains(i.Ready.Item.Id))] };
            Dictionary<string, Shape> contours = ids.Select(id => (id, Area: ItemContours.Of(desk.Items[id])))
                .Where(c => c.Area is not null).ToDictionary(c => c.id, c => c.Area!, StringComparer.Ordinal);
            Reading<LaidOut> laid = SheetLayouts.Of(left, contours, cancellation);
            if (laid is { IsTaken: true, Value.Unplaced.Count: 0 })
                return laid.Value;

            ILookup<string, InputFault> faults = laid.Match(
                l => l.Unplaced.ToLookup(u => SheetLayouts.ItemIdOf(u.PieceId), SheetLayouts.Fault),
                f => ids.SelectMany(id => f.Select(fault => (id, fault))).ToLookup(p => p.id, p => p.fault));
            foreach (IGrouping<string, InputFault> item in faults)
                desk.Hold(item.Key, [.. item]);
            measured.RemoveAll(m => faults.Contains(m.Item.Id));
        }

        return null;
    }

    /// <summary>The items of a planned run with their ink.</summary>
    /// <returns>The items, or why one cannot be measured.</returns>
    internal static async Task<Reading<IReadOnlyList<PlannedItem>>> MeasureAsync(IInkMeasure measure, RunContext context, CancellationToken cancellation)
    {
        List<PlannedItem> items = [];
        foreach (ItemRecord item in context.Items)
        {
            FormedItem formed = new(ReadyItems.Of(item.Item, item.OrderId, item.Artwork), item.Stack ?? context.Run.Stack);
            ItemRecord record = item with { Stack = formed.Stack };
            Reading<IReadOnlyList<LayerInk>> ink = await measure.MeasureAsync(record, context.Condition, context.InkSet, context.ProfilePath, cancellation);
            if (!ink.IsTaken)
                return Reading.Refused<IReadOnlyList<PlannedItem>>(ink.Faults);
            items.Add(Planned(formed, ink.Value, record));
        }

        return Reading.Of<IReadOnlyList<PlannedItem>>(items);
    }

    /// <summary>An item with what was measured of it.</summary>
    internal static PlannedItem Planned(FormedItem item, IReadOnlyList<LayerInk> ink, ItemRecord record) => new(
        item.Ready.Item,
        item.Ready.OrderId,
        [.. ink.Select(i => new LayerCoverage(i.Layer, i.Role, i.MeanCoverage, i.MaxTotal))],
        item.Ready.SmallestTextPt,
        item.Ready.SmallestModuleMm,
        ReadyItems.CutLengthMm(record));

    private async Task<string> HashAsync(
        Laydown.Plan.Runs.Run run, IReadOnlyList<PlannedItem> members, Desk desk, CancellationToken cancellation)
    {
        Reading<RunContext> context = RunContexts.Gather(run, catalogue, [.. members.Select(m => desk.Items[m.Item.Id])], looks);
        return await RunContexts.HashAsync(context.Value, cancellation);
    }

    private async Task<IReadOnlyList<string>> DissolveAsync(CancellationToken cancellation)
    {
        Dictionary<string, ItemRecord> items = (await store.OrdersAsync(cancellation)).SelectMany(o => o.Items)
            .ToDictionary(i => i.Item.Id, StringComparer.Ordinal);
        List<RunRecord> stale = [.. (await store.RunsAsync(cancellation)).Where(r => LostItems(r, items))];
        if (stale.Count > 0)
        {
            await store.SaveRunsAsync(
                [.. stale.Select(r => r with { State = RunState.Aborted, FolderName = null, Files = [], Failure = "Dissolved: an item changed after planning." })],
                ItemState.Ready,
                cancellation);
        }

        return [.. stale.Select(r => r.Run.Id)];
    }

    private static bool LostItems(RunRecord run, Dictionary<string, ItemRecord> items)
    {
        int kept = run.Run.Items.Count(i => string.Equals(items.GetValueOrDefault(i.ItemId)?.RunId, run.Run.Id, StringComparison.Ordinal));
        return kept < run.Run.Items.Count && (kept > 0 || run.State != RunState.Aborted);
    }

    /// <summary>What lies on the desk while planning: the items, the numbers, the runs so far.</summary>
    private sealed record Desk(Dictionary<string, ItemRecord> Items, Numbers Numbers, List<RunRecord> Runs)
    {
        public Laydown.Plan.Log.EstimateModel? Learnt { get; set; }

        public IInkMeasure? Measure { get; init; }

        public void Hold(string itemId, IReadOnlyList<InputFault> faults)
        {
            ItemRecord item = Items[itemId];
            Items[itemId] = item with { State = ItemState.Stopped, Faults = [.. item.Faults, .. faults] };
        }
    }

    private sealed class Numbers(string day, int last, bool exactly = false)
    {
        private int number = last;

        public string Next() => exactly ? day : Invariant($"{day}{++number:00}");
    }
}
