using Laydown.Measures;
using Laydown.Shop.Check;
using Laydown.Shop.Layers;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Run;

/// <summary>A whole day's work: takes orders, checks, solves panels, plans, makes every run and quotes every order. What goes wrong with one holds up no other.</summary>
/// <param name="shop">The shop.</param>
/// <param name="clock">Measures the time of each station.</param>
public sealed class WorkDay(ShopServices shop, TimeProvider clock)
{
    /// <summary>Does the day's work. Work that was done before, and whose inputs did not change, is not done again.</summary>
    /// <param name="today">The day.</param>
    /// <param name="progress">Told when a station begins and when it is done; null for nobody.</param>
    /// <param name="cancellation">Stops the work; what is done by then stays.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public async Task<DayReport> WorkAsync(DateOnly today, IProgress<DayStation>? progress, CancellationToken cancellation)
    {
        Log log = new(clock, progress, []);
        TakenOrders taken = await log.DoAsync("orders", () => shop.TakeOrders.TakeAsync(cancellation), Words);
        await log.DoAsync("check", () => shop.CheckItems.CheckAsync(cancellation), Words);
        SolvedPanels panels = await log.DoAsync("panels", () => shop.Layers.SolveWaiting.SolveAsync(cancellation), Words);
        await log.DoAsync("plan", () => shop.PlanRuns.PlanAsync(today, cancellation), Words);
        Outcome made = await log.DoAsync("make", () => MakeAllAsync(cancellation), o => Invariant($"{o.Done.Count} runs made, {o.Failed.Count} aborted"));
        Outcome quoted = await log.DoAsync("quote", () => QuoteAllAsync(cancellation), o => Invariant($"{o.Done.Count} orders quoted"));

        IReadOnlyList<OrderRecord> orders = await shop.Store.OrdersAsync(cancellation);
        HashSet<string> done = [.. made.Done];
        return new(
            log.Stations,
            orders.Count,
            taken.Refused,
            [.. (await shop.Store.RunsAsync(cancellation)).Where(r => done.Contains(r.Run.Id))],
            made.Failed,
            [.. orders.SelectMany(o => o.Items).Where(i => i.State is ItemState.Stopped).OrderBy(i => i.Item.Id, StringComparer.Ordinal)],
            quoted.Done,
            [.. panels.Faults, .. made.Faults, .. quoted.Faults]);
    }

    private async Task<Outcome> MakeAllAsync(CancellationToken cancellation)
    {
        // Runs that a change dissolved carry no items any more and are left alone.
        HashSet<string> wanted = [.. (await shop.Store.OrdersAsync(cancellation)).SelectMany(o => o.Items).Select(i => i.RunId).OfType<string>()];
        Outcome outcome = new([], [], []);
        foreach (RunRecord run in (await shop.Store.RunsAsync(cancellation)).Where(r => wanted.Contains(r.Run.Id)))
            outcome.Add(run.Run.Id, await shop.MakeRun.MakeAsync(run.Run.Id, cancellation));
        return outcome;
    }

    private async Task<Outcome> QuoteAllAsync(CancellationToken cancellation)
    {
        Outcome outcome = new([], [], []);
        foreach (OrderRecord order in await shop.Store.OrdersAsync(cancellation))
            outcome.Add(order.Order.Id, await shop.QuoteOrder.QuoteAsync(order.Order.Id, cancellation));
        return outcome;
    }

    private static string Words(TakenOrders taken) =>
        Invariant($"{taken.Orders.Count} orders taken ({taken.Unchanged} unchanged), {taken.Refused.Count} refused");

    private static string Words(CheckedItems looked) =>
        Invariant($"{looked.Items.Count} items checked, {looked.Stopped} held back");

    private static string Words(SolvedPanels panels) => Invariant($"{panels.ItemIds.Count} day and night panels solved, {panels.Faults.Count} faults");

    private static string Words(PlannedRuns planned) =>
        Invariant($"{planned.Runs.Count} runs planned, {planned.Held.Count} items held back");

    private sealed record Outcome(List<string> Done, List<string> Failed, List<InputFault> Faults)
    {
        public void Add<T>(string id, Reading<T> reading)
        {
            (reading.IsTaken ? Done : Failed).Add(id);
            Faults.AddRange(reading.Faults);
        }
    }

    private sealed record Log(TimeProvider Clock, IProgress<DayStation>? Progress, List<DayStation> Stations)
    {
        public async Task<T> DoAsync<T>(string name, Func<Task<T>> work, Func<T, string> words)
        {
            Progress?.Report(new(name, 0, false, ""));
            long start = Clock.GetTimestamp();
            T result = await work();
            DayStation done = new(name, Clock.GetElapsedTime(start).TotalSeconds, true, words(result));
            Stations.Add(done);
            Progress?.Report(done);
            return result;
        }
    }
}
