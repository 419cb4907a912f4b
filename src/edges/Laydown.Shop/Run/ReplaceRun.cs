using Laydown.Measures;
using Laydown.Press.Stacks;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Run;

/// <summary>Puts a run that was planned anew in the place of the one before: as a whole or not at all.</summary>
/// <param name="folder">The shop's folder.</param>
/// <param name="store">What the shop remembers.</param>
/// <param name="makeRun">Knows whether the run is being made.</param>
public sealed class ReplaceRun(ShopFolder folder, IShopStore store, MakeRun makeRun)
{
    /// <summary>
    /// Saves the run. Press files of the one before leave the run's folder first, so that nobody prints from them; they are made again as those of any
    /// run, and a release is gone: the sheet must be measured anew.
    /// </summary>
    /// <param name="run">The run as planned anew; its id is that of the one before.</param>
    /// <param name="hash">Content hash of its inputs.</param>
    /// <param name="filesGone">What the run says of its press files where it had some.</param>
    /// <param name="refusal">Looks once more at the run as it stands when nothing else can change it; null where it may be replaced.</param>
    /// <param name="stacks">Layers of its items where they are others than before, by item; null for none.</param>
    /// <returns>The run as it is now, or why it was not replaced; then nothing was changed.</returns>
    internal Task<Reading<RunRecord>> ReplaceAsync(Laydown.Plan.Runs.Run run, string hash, string filesGone, Func<RunRecord, InputFault?> refusal,
        IReadOnlyDictionary<string, LayerStack>? stacks = null) => makeRun.WhileIdleAsync(run.Id, () => CommitAsync(run, hash, filesGone, refusal, stacks));

    /// <summary>Why a run cannot be replaced whatever comes in its place; null where it can.</summary>
    internal static InputFault? Closed(RunRecord record) => record.State switch
    {
        RunState.InProgress => new(
            Invariant($"run {record.Run.Id}"), null, "state", "its press files are being made", "a run that is not being made; cancel the making, or wait for its end"),
        RunState.Aborted when record.Failure?.StartsWith("Dissolved", StringComparison.Ordinal) == true => new(
            Invariant($"run {record.Run.Id}"), null, "state", "dissolved because an item changed", "a run that still has its items"),
        _ => null,
    };

    private async Task<Reading<RunRecord>> CommitAsync(Laydown.Plan.Runs.Run run, string hash, string filesGone, Func<RunRecord, InputFault?> refusal, IReadOnlyDictionary<string, LayerStack>? stacks)
    {
        RunRecord? now = await store.RunAsync(run.Id, CancellationToken.None);
        if (now is null)
            return Reading.Refused<RunRecord>(new InputFault(Invariant($"run {run.Id}"), null, "id", "no run of that id any more", "a run that is still planned; load the page again"));
        if (refusal(now) is { } fault)
            return Reading.Refused<RunRecord>(fault);
        RunRecord saved = now with
        {
            Run = run,
            State = RunState.Waiting,
            InputHash = hash,
            FolderName = null,
            Files = [],
            Failure = now.Files.Count > 0 ? filesGone : null,
            LetGo = null,
            FilesLayout = null,
        };

        List<ItemRecord> items = [];
        foreach ((string itemId, LayerStack stack) in stacks ?? new Dictionary<string, LayerStack>())
        {
            if (await store.ItemAsync(itemId, CancellationToken.None) is not { } item || item.RunId != run.Id)
                return Reading.Refused<RunRecord>(new InputFault(Invariant($"run {run.Id}"), null, "item", Invariant($"{itemId}, which has left it"), "the items it was planned with; load the page again"));
            items.Add(item with { Stack = stack });
        }

        // The files go out of sight first: should the rest fail, they come back, and a kill in between leaves a run that is made again.
        string? aside = RunFolders.SetAside(folder.Runs, run.Id);
        try
        {
            await store.ReplaceRunAsync(saved, items, CancellationToken.None);
        }
        catch
        {
            RunFolders.BringBack(folder.Runs, run.Id, aside);
            throw;
        }

        RunFolders.Remove(aside);
        return Reading.Of(saved);
    }
}
