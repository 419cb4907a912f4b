using Laydown.Measures;
using Laydown.Plan.Calendar;
using Laydown.Press.Machines;
using Laydown.Shop.Orders;
using Laydown.Shop.Press;

namespace Laydown.Shop.Run;

/// <summary>The set-up sheet of a run as it stands now: with what was measured and let go, or a form for it.</summary>
/// <remarks>The sheet in the run's folder is made before anybody measures, so it has the form.</remarks>
/// <param name="catalogue">What the shop has.</param>
/// <param name="store">What it remembers.</param>
/// <param name="plan">Knows the looks of the shop.</param>
/// <param name="documents">Writes papers.</param>
/// <param name="levels">Tells how full tanks are; null to show what the press's description says.</param>
/// <param name="supply">Tells whether the stock room holds what a run takes; null to show what was found when it was planned.</param>
public sealed class SetUpPaper(Catalogue catalogue, IShopStore store, PlanRuns plan, IRunDocuments documents, TankLevels? levels = null, SupplyOfRun? supply = null)
{
    /// <summary>The sheet as A4 PDF.</summary>
    /// <param name="runId">The run.</param>
    /// <param name="cancellation">Stops.</param>
    /// <returns>The PDF, or why there is none.</returns>
    public async Task<Reading<byte[]>> PdfAsync(string runId, CancellationToken cancellation)
    {
        RunRecord? record = await store.RunAsync(runId, cancellation);
        if (record is null)
            return Reading.Refused<byte[]>(new InputFault(Invariant($"run {runId}"), null, "id", "no run of that id", "the id of a planned run"));
        IReadOnlyList<ItemRecord> items = [.. (await store.OrdersAsync(cancellation)).SelectMany(o => o.Items)];
        Laydown.Plan.Runs.RunRelease? letGo = record.LetGo is { } go && catalogue.Calendar is { } calendar ? go with { At = new OpenTimes(calendar).At(go.At) } : record.LetGo;
        Reading<RunContext> context = RunContexts.Gather(supply is null ? record.Run : await supply.AsNowAsync(record.Run, cancellation), catalogue, items, plan.Looks);
        if (!context.IsTaken)
            return Reading.Refused<byte[]>(context.Faults);
        PressDescription press = levels is null ? context.Value.Press : await levels.AsReadAsync(context.Value.Press, cancellation);
        return Reading.Of(documents.SetUpPdf(context.Value with { LetGo = letGo, Press = press }));
    }

    /// <summary>The sheet as a file: whole or not at all.</summary>
    /// <param name="runId">The run.</param>
    /// <param name="path">Where it goes.</param>
    /// <param name="cancellation">Stops.</param>
    /// <returns>The path, or why nothing was written.</returns>
    public async Task<Reading<string>> WriteAsync(string runId, string path, CancellationToken cancellation)
    {
        Reading<byte[]> made = await PdfAsync(runId, cancellation);
        if (!made.IsTaken)
            return Reading.Refused<string>(made.Faults);
        await WholeFile.WriteAsync(path, made.Value, cancellation);
        return Reading.Of(path);
    }
}
