using Laydown.Edges.Tests.Proof;
using Laydown.Edges.Tests.UseCases;
using Laydown.Measures;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;
using Laydown.Store;
using Xunit.Sdk;
using Xunit.v3;

[assembly: TestPipelineStartup(typeof(Laydown.Edges.Tests.Store.StoreWriter))]

namespace Laydown.Edges.Tests.Store;

/// <summary>
/// A program that writes to a store until it is killed: this very test program, started again with the name of a store in its environment.
/// Round n saves an order of n items, whose notes all say n, and then a run with n files.
/// </summary>
public sealed class StoreWriter : ITestPipelineStartup
{
    public const string StoreVariable = "LAYDOWN_TEST_STORE_WRITER";
    public const int Items = 6;

    /// <summary>Called before the first test; returns at once unless a store is named.</summary>
    public async ValueTask StartAsync(IMessageSink diagnosticMessageSink)
    {
        if (Environment.GetEnvironmentVariable(StoreVariable) is { Length: > 0 } path)
            await WriteForEverAsync(path);
    }

    public ValueTask StopAsync() => ValueTask.CompletedTask;

    public static OrderRecord Order(int round) => Samples.OrderRecord(
        "TW-9001",
        [.. Enumerable.Range(1, Items).Select(i => Samples.ItemRecord(Invariant($"TW-9001-{i}"), ItemState.Ready) with { Customer = Invariant($"{round}") })]);

    public static RunRecord Run(int round) => Samples.RunRecord(
        "R-20261126-01", RunState.InProgress, [.. Enumerable.Range(1, Items).Select(i => Invariant($"TW-9001-{i}"))]) with
    {
        InputHash = Invariant($"{round}"),
        Files = [.. Enumerable.Range(0, round % 7).Select(f => new ManifestEntry(Invariant($"f{f}"), "run", round, Invariant($"{round}")))],
    };

    private static async Task WriteForEverAsync(string path)
    {
        SqliteShopStore store = new(path);
        await store.OpenAsync(CancellationToken.None);
        SqliteProofStore proofs = new(path);
        for (int round = 1; ; round++)
        {
            await proofs.SaveLinkAsync(ProofSamples.Link(Invariant($"link-{Environment.ProcessId}-{round}")), CancellationToken.None);
            await proofs.AddAnswerAsync(ProofSamples.Answer(Invariant($"link-{Environment.ProcessId}-{round}"), round), int.MaxValue, int.MaxValue, DateTimeOffset.UnixEpoch, CancellationToken.None);
            await store.SaveOrderAsync(Order(round), CancellationToken.None);
            await store.SaveRunsAsync([Run(round)], round % 2 == 0 ? ItemState.Planned : ItemState.Completed, CancellationToken.None);
            await store.SaveRefusedOrderAsync("TW-9002/order.json", [new InputFault("order.json", null, "/id", Invariant($"{round}"), "more")], CancellationToken.None);
            // Told only after the save returned: from here on the round must survive anything.
            await Console.Out.WriteLineAsync(Invariant($"saved {round}"));
            await Console.Out.FlushAsync();
        }
    }
}
