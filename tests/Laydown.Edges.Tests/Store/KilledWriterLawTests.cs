using System.Diagnostics;
using Laydown.Edges.Tests.Proof;
using Laydown.Shop.Orders;
using Laydown.Shop.Proof;
using Laydown.Shop.Run;
using Laydown.Store;
using Microsoft.Data.Sqlite;

namespace Laydown.Edges.Tests.Store;

/// <summary>A writer is killed with SIGKILL at moments of a fixed seed; what it said it saved must be there, and nothing half.</summary>
public sealed class KilledWriterLawTests : IDisposable
{
    private const int Kills = 20;
    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task Each_save_is_whole_or_absent_after_a_kill_at_any_moment()
    {
        Random chance = new(20261125);
        string path = Path.Combine(folder.Path, "shop.db");
        int roundsInAll = 0;
        for (int kill = 0; kill < Kills; kill++)
        {
            // Every fourth time the data base is new, so that its creation is hit as well.
            if (kill % 4 == 0)
                folder.Empty();
            int said = await KillAsync(path, kill % 4 == 0, TimeSpan.FromMilliseconds(chance.Next(5, kill % 4 == 0 ? 1200 : 300)));
            roundsInAll += said;
            await CheckAsync(path, said);
        }

        Assert.True(roundsInAll > Kills, Invariant($"The writer saved {roundsInAll} rounds in all: too few to be hit while writing."));
    }

    private static async Task CheckAsync(string path, int said)
    {
        SqliteShopStore store = new(path);
        await store.OpenAsync(CancellationToken.None);
        await using (SqliteConnection connection = new(Invariant($"Data Source={path}")))
        {
            await connection.OpenAsync();
            await using SqliteCommand command = connection.CreateCommand();
            command.CommandText = "PRAGMA integrity_check";
            Assert.Equal("ok", await command.ExecuteScalarAsync());
        }

        await CheckAnswersAsync(path, said);
        IReadOnlyList<OrderRecord> orders = await store.OrdersAsync(CancellationToken.None);
        IReadOnlyList<RunRecord> runs = await store.RunsAsync(CancellationToken.None);
        if (said == 0 && orders.Count == 0)
            return;

        // All items are of one round, at least the one the writer said it had saved.
        IReadOnlyList<ItemRecord> items = Assert.Single(orders).Items;
        Assert.Equal(StoreWriter.Items, items.Count);
        int orderRound = Number(Assert.Single(items.Select(i => i.Customer).Distinct()));
        Assert.True(orderRound >= said, Invariant($"Order of round {orderRound}; the writer had said {said}."));
        Assert.Single(items.Select(i => (i.State, i.RunId)).Distinct());
        if (runs.Count == 0)
            return;
        RunRecord run = Assert.Single(runs);
        Assert.Equivalent(StoreWriter.Run(Number(run.InputHash)), run, strict: true);
        Assert.True(said == 0 || Number(run.InputHash) >= said, Invariant($"Run of round {run.InputHash}; the writer had said {said}."));
    }

    // Every answer of every round that was said, whole, each with its link; at most one link more than answers.
    private static async Task CheckAnswersAsync(string path, int said)
    {
        SqliteProofStore proofs = new(path);
        IReadOnlyList<ProofAnswer> answers = await proofs.AnswersAsync(ProofSamples.Item, CancellationToken.None);
        IReadOnlyList<ProofLink> links = await proofs.LinksAsync(null, CancellationToken.None);
        Assert.True(answers.Select(a => a.Id).Distinct().Count() >= said, Invariant($"{answers.Count} answers; the writer had said {said}."));
        Assert.All(answers, a => Assert.Contains(links, l => l.Id == a.LinkId));
        Assert.All(answers, a => Assert.Equal(ProofSamples.Answer(a.LinkId, Number(a.Text)), a));
    }

    private static int Number(string text) => int.Parse(text, System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>Starts the writer, kills it after a while and returns the last round it said it had saved.</summary>
    /// <param name="path">The store.</param>
    /// <param name="fresh">Whether the clock runs from the first touch of the folder, to hit the making of the tables; else from the first save.</param>
    /// <param name="after">How long it lives from then on.</param>
    private static async Task<int> KillAsync(string path, bool fresh, TimeSpan after)
    {
        string touched = Path.Combine(Path.GetDirectoryName(path) ?? "", "shop.lock");
        File.Delete(touched);
        using Process writer = Start(path);
        TaskCompletionSource firstSave = new(TaskCreationOptions.RunContinuationsAsynchronously);
        Task<int> listening = ListenAsync(writer.StandardOutput, firstSave);
        while (!writer.HasExited && !(fresh ? File.Exists(touched) : firstSave.Task.IsCompleted))
            await Task.Delay(5);
        await Task.Delay(after);
        Assert.False(writer.HasExited, "The writer ended by itself.");
        writer.Kill();
        await writer.WaitForExitAsync();
        return await listening;
    }

    private static async Task<int> ListenAsync(StreamReader output, TaskCompletionSource firstSave)
    {
        int said = 0;
        while (await output.ReadLineAsync() is { } line)
        {
            if (!line.StartsWith("saved ", StringComparison.Ordinal))
                continue;
            said = Number(line["saved ".Length..]);
            firstSave.TrySetResult();
        }

        return said;
    }

    private static Process Start(string path)
    {
        ProcessStartInfo start = new(Environment.ProcessPath ?? throw new InvalidOperationException("A process has a path."))
        {
            RedirectStandardOutput = true,
        };
        if (Path.GetFileNameWithoutExtension(Environment.ProcessPath) == "dotnet")
            start.ArgumentList.Add(typeof(KilledWriterLawTests).Assembly.Location);
        start.Environment[StoreWriter.StoreVariable] = path;
        return Process.Start(start) ?? throw new InvalidOperationException("The writer did not start.");
    }
}
