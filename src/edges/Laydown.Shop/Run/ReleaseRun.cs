using Laydown.Measures;
using Laydown.Plan.Log;
using Laydown.Plan.Runs;
using Laydown.Press.Machines;
using Laydown.Press.Stocks;
using Laydown.Shop.Log;
using Laydown.Shop.Orders;
using Laydown.Shop.Press;

namespace Laydown.Shop.Run;

/// <summary>Lets a run go to the press once two people measured its sheet, and takes that back.</summary>
/// <param name="catalogue">What the shop has.</param>
/// <param name="store">What it remembers.</param>
/// <param name="makeRun">Knows whether the run is being made.</param>
/// <param name="clock">Tells when it was.</param>
/// <param name="log">Keeps what was measured in the log too; null where the shop keeps none.</param>
/// <param name="levels">Tells how full tanks are; null to believe the press's description.</param>
/// <param name="supply">Tells whether the stock room holds what a run takes; null to believe what was found when it was planned.</param>
public sealed class ReleaseRun(Catalogue catalogue, IShopStore store, MakeRun makeRun, TimeProvider clock, KeepLog? log = null, TankLevels? levels = null, SupplyOfRun? supply = null)
{
    /// <summary>How the entry of the log begins that tells of a run let go, after the thickness of a roll.</summary>
    internal const string LetGoWords = "Let go, checked by ";

    /// <summary>Judges what was measured and, where nothing speaks against it, keeps the release with the run.</summary>
    /// <returns>The run as it is now, or every reason against it; then nothing was changed.</returns>
    public async Task<Reading<RunRecord>> ReleaseAsync(string runId, MeasuredSheet measured, CancellationToken cancellation)
    {
        IReadOnlyList<PressDescription> presses = await PressesAsync(cancellation);
        Laydown.Plan.Runs.Run? seen = (await store.RunAsync(runId, cancellation))?.Run;
        IReadOnlyList<string>? refusals = seen is null || supply is null ? null : (await supply.AsNowAsync(seen, cancellation)).SetUp.Refusals;
        Reading<RunRecord> done = await ChangeAsync(
            runId, record => Judge(record, refusals, measured, presses).Then(r => Reading.Of(record with { LetGo = r with { At = clock.GetUtcNow() } })), cancellation);

        // What was measured once is not asked for twice: the log has it as well. A log that does not take it takes nothing of the release back.
        if (done.IsTaken && log is not null)
            await log.KeepAsync(Entry(done.Value), CancellationToken.None);
        return done;
    }

    /// <summary>Takes a release back; the sheet must be measured again.</summary>
    /// <returns>The run as it is now, or why not: no such run, or it was not let go.</returns>
    public Task<Reading<RunRecord>> TakeBackAsync(string runId, CancellationToken cancellation) => ChangeAsync(
        runId,
        record => record.LetGo is null
            ? Reading.Refused<RunRecord>(RunFaults.Of(runId, "release", "a run that was not let go", "one that was"))
            : Reading.Of(record with { LetGo = null }),
        cancellation);

    /// <summary>Why a run must not go to the press as things stand now: its set-up as planned, and ink that the tanks lack.</summary>
    /// <param name="run">The run.</param>
    /// <param name="cancellation">Stops reading.</param>
    public async Task<IReadOnlyList<string>> RefusalsAsync(Laydown.Plan.Runs.Run run, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(run);
        PressDescription? press = (await PressesAsync(cancellation)).FirstOrDefault(p => string.Equals(p.Id, run.PressId, StringComparison.Ordinal));
        Laydown.Plan.Runs.Run now = supply is null ? run : await supply.AsNowAsync(run, cancellation);
        return press is null ? now.SetUp.Refusals : InkSupply.RefusalsNow(now, press);
    }

    private static LogEntry Entry(RunRecord record)
    {
        RunRelease letGo = record.LetGo!;
        MeasuredSheet measured = letGo.Measured;
        string note = Invariant($"{LetGoWords}{measured.CheckedBy} at {measured.CheckedHighestMm:0.00} mm; highest edge {measured.EdgeLiftMm:0.0} mm, heads {letGo.HeadGap.Mm:0.0} mm over the belt.");
        bool five = measured.ThicknessMm.Count == SheetThickness.Points;
        return new(0, default, five ? LogKind.Thickness : LogKind.Note, record.Run.Id, record.Run.PressId, measured.MeasuredBy,
            five ? note : Invariant($"Thickness {string.Join(", ", measured.ThicknessMm.Select(t => Invariant($"{t:0.00}")))} mm. {note}"),
            Thickness: five ? new(measured.ThicknessMm) : null);
    }

    private async Task<IReadOnlyList<PressDescription>> PressesAsync(CancellationToken cancellation)
    {
        if (levels is null)
            return catalogue.Presses;
        List<PressDescription> presses = [];
        foreach (PressDescription press in catalogue.Presses)
            presses.Add(await levels.AsReadAsync(press, cancellation));
        return presses;
    }

    private Reading<RunRelease> Judge(RunRecord record, IReadOnlyList<string>? refusals, MeasuredSheet measured, IReadOnlyList<PressDescription> presses)
    {
        Laydown.Plan.Runs.Run run = refusals is null ? record.Run : record.Run with { SetUp = record.Run.SetUp with { Refusals = refusals } };
        PressDescription? press = presses.FirstOrDefault(p => string.Equals(p.Id, run.PressId, StringComparison.Ordinal));
        Stock? stock = catalogue.Stocks.FirstOrDefault(s => string.Equals(s.Id, run.StockId, StringComparison.Ordinal));
        if (press is null || stock is null)
            return Reading.Refused<RunRelease>(RunFaults.Of(run.Id, press is null ? "press" : "stock", press is null ? run.PressId : run.StockId, "one the shop still has"));
        return record.State == RunState.Completed
            ? ReleaseCheck.Of(run, press, stock, measured)
            : Reading.Refused<RunRelease>(RunFaults.Of(run.Id, "state", "no whole press files", Invariant($"press files of the run as planned; make them first (laydown run make {run.Id})")));
    }

    private async Task<Reading<RunRecord>> ChangeAsync(string runId, Func<RunRecord, Reading<RunRecord>> change, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        return await makeRun.WhileIdleAsync(runId, async () =>
        {
            RunRecord? record = await store.RunAsync(runId, CancellationToken.None);
            if (record is null)
                return Reading.Refused<RunRecord>(RunFaults.Of(runId, "id", "no run of that id", "the id of a planned run"));
            Reading<RunRecord> changed = change(record);
            if (changed.IsTaken)
                await store.SaveRunsAsync([changed.Value], record.State == RunState.Completed ? ItemState.Completed : ItemState.Planned, CancellationToken.None);
            return changed;
        });
    }
}
