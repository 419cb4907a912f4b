using Laydown.Measures;
using Laydown.Plan.Log;
using Laydown.Shop.Log;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Run;

/// <summary>Signs the first piece of a run off: every check of the set-up sheet made, by name, after the run was let go. It stands in the log.</summary>
/// <param name="store">What the shop remembers.</param>
/// <param name="log">The log.</param>
public sealed class ApproveFirstPiece(IShopStore store, LogServices log)
{
    private const string Beginning = "First piece approved: ";
    private const int MostLetters = 1000;

    /// <summary>Signs it off, or says what is missing: the run is not let go, a check was not made, nobody signs.</summary>
    /// <param name="runId">The run.</param>
    /// <param name="approval">What is said.</param>
    /// <param name="cancellation">Stops; then nothing is kept.</param>
    public async Task<Reading<ApprovedPiece>> ApproveAsync(string runId, FirstPieceApproval approval, CancellationToken cancellation)
    {
        RunRecord? record = await store.RunAsync(runId, cancellation);
        if (record is null)
            return Reading.Refused<ApprovedPiece>(RunFaults.Of(runId, "id", "no run of that id", "the id of a planned run"));
        IReadOnlyList<InputFault> faults = [.. Faults(record, approval)];
        if (faults.Count > 0)
            return Reading.Refused<ApprovedPiece>(faults);
        string notes = string.IsNullOrWhiteSpace(approval.Notes) ? "" : " " + approval.Notes.Trim();
        string words = Invariant($"{Beginning}all {record.Run.SetUp.FirstPieceChecks.Count} checks made.{notes}");
        return (await log.Keep.KeepAsync(new(0, default, LogKind.Note, runId, record.Run.PressId, approval.By.Trim(), words), cancellation))
            .Then(kept => Reading.Of(new ApprovedPiece(kept.By, kept.At, words)));
    }

    /// <summary>The approval that holds: the last one after the run was let go; null where there is none.</summary>
    /// <param name="record">The run.</param>
    /// <param name="cancellation">Stops reading.</param>
    public async Task<ApprovedPiece?> OfAsync(RunRecord record, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(record);
        if (record.LetGo is not { } letGo)
            return null;
        LogEntry[] entries = [.. (await log.Read.OfRunAsync(record.Run.Id, cancellation)).Where(e => e is { Struck: false, Note: not null })];
        int since = Array.FindLastIndex(entries, e => e.Note!.Contains(ReleaseRun.LetGoWords, StringComparison.Ordinal));

        // The log tells of letting go itself; where it did not take that, the clock decides.
        LogEntry? last = entries.Skip(since + 1).LastOrDefault(e => e.Kind == LogKind.Note && e.Note!.StartsWith(Beginning, StringComparison.Ordinal) && (since >= 0 || e.At >= letGo.At));
        return last is null ? null : new(last.By, last.At, last.Note!);
    }

    private static IEnumerable<InputFault> Faults(RunRecord record, FirstPieceApproval approval)
    {
        string id = record.Run.Id;
        if (record.LetGo is null)
            yield return RunFaults.Of(id, "letGo", "a run that was not let go", "a sheet that two people measured; let the run go first");
        IReadOnlyList<string> checks = record.Run.SetUp.FirstPieceChecks;
        foreach ((int i, string check) in checks.Index().Where(c => !approval.Made.Contains(c.Index + 1)))
            yield return RunFaults.Of(id, Invariant($"check {i + 1}"), "not made", check.TrimEnd('.'));
        foreach (int number in approval.Made.Where(n => n < 1 || n > checks.Count).Take(1))
            yield return RunFaults.Of(id, "made", Invariant($"check {number}"), Invariant($"checks 1 to {checks.Count}"));
        if (string.IsNullOrWhiteSpace(approval.By) || approval.By.Length > 100)
            yield return RunFaults.Of(id, "by", string.IsNullOrWhiteSpace(approval.By) ? "nobody" : "a long name", "the name of who approves, at most 100 letters");
        if (approval.Notes is { Length: > MostLetters })
            yield return RunFaults.Of(id, "notes", Invariant($"{approval.Notes.Length} letters"), Invariant($"at most {MostLetters} letters"));
    }
}
