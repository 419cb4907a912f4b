using Laydown.Measures;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Run;

/// <summary>Makes the dots of a run: its other files first, where they are not whole.</summary>
/// <param name="folder">The shop's folder.</param>
/// <param name="store">What the shop remembers.</param>
/// <param name="makeRun">Makes the run's other files, and lets one make at a time through.</param>
/// <param name="dots">Makes dots; null where nothing can.</param>
/// <param name="board">Where progress is told.</param>
public sealed class MakeDots(ShopFolder folder, IShopStore store, MakeRun makeRun, IDotFiles? dots, ProgressBoard board)
{
    /// <summary>Puts the dots of every sheet, layer and ink into <c>runs/<i>id</i></c>. The run stays as it was where they cannot be made.</summary>
    /// <returns>The run with all its files, or why there are no dots.</returns>
    /// <exception cref="OperationCanceledException">Making was cancelled; what was made waits in scratch.</exception>
    public async Task<Reading<RunRecord>> MakeAsync(string runId, DotsWish wish, CancellationToken cancellation)
    {
        Reading<RunRecord> made = await makeRun.MakeAsync(runId, cancellation);
        return made.IsTaken
            ? await makeRun.InTurnAsync(made.Value, (record, context) => DotsAsync(record, context, wish, cancellation), cancellation)
            : made;
    }

    private async Task<Reading<RunRecord>> DotsAsync(RunRecord record, RunContext context, DotsWish wish, CancellationToken cancellation)
    {
        string id = record.Run.Id;
        if (dots is null)
            return Reading.Refused<RunRecord>(new InputFault(Invariant($"run {id}"), null, "dots", "nothing here that makes them", "a shop that can"));
        board.Report(new(id, "dots begun", 0));
        Reading<IReadOnlyList<ManifestEntry>> files = await dots.MakeAsync(context, wish, folder.Runs, record.Files, board, cancellation);
        if (!files.IsTaken)
        {
            board.Report(new(id, Invariant($"no dots: {files.Faults[0]}"), board.Latest(id)?.DonePercent ?? 0));
            return Reading.Refused<RunRecord>(files.Faults);
        }

        // Folder and store must agree: no cancellation from here on.
        RunRecord done = record with { Files = files.Value };
        await store.SaveRunsAsync([done], ItemState.Completed, CancellationToken.None);
        board.Report(new(id, "made", 100));
        return Reading.Of(done);
    }
}
