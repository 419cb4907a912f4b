using Laydown.Intake.Artwork;
using Laydown.Intake.Colour;
using Laydown.Intake.Layers;
using Laydown.Measures;
using Laydown.Output.Charts;
using Laydown.Output.Colour;
using Laydown.Output.Documents;
using Laydown.Output.Layers;
using Laydown.Output.Pyramids;
using Laydown.Plan.Orders;
using Laydown.Shop.Check;
using Laydown.Shop.Colour;
using Laydown.Shop.Layers;
using Laydown.Shop.Orders;
using Laydown.Shop.Press;
using Laydown.Shop.Proof;
using Laydown.Shop.Run;
using Laydown.Store;
using Laydown.Shop;

namespace Laydown.Edges.Tests.UseCases;

/// <summary>The use cases one after the other, with fakes behind the ports.</summary>
public sealed class DayLawTests : IDisposable
{
    private static readonly CancellationToken None = CancellationToken.None;
    private readonly ShopBench shop = new();

    public void Dispose() => shop.Dispose();

    [Fact]
    public async Task Orders_become_made_runs_and_quotes()
    {
        PutTwo();
        DayReport report = await WorkAsync();
        Assert.Equal(["orders", "check", "panels", "plan", "make", "quote"], report.Stations.Select(s => s.Name));
        Assert.Empty(report.Held);
        RunRecord run = Assert.Single(report.Runs);
        Assert.Equal(("R-20261125-01", RunState.Completed), (run.Run.Id, run.State));
        Assert.Equal(["TW-1-1", "TW-2-1"], run.Run.Items.Select(i => i.ItemId));
        Assert.True(File.Exists(Path.Combine(shop.Folder.Runs, "R-20261125-01", "run.json")));
        Assert.Equal(["TW-1.pdf", "TW-2.pdf"], Directory.GetFiles(shop.Folder.Quotes).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        Assert.All(await ItemsAsync(), i => Assert.Equal((ItemState.Completed, "R-20261125-01"), (i.State, i.RunId)));
    }

    [Fact]
    public async Task A_second_day_makes_nothing_again()
    {
        PutTwo();
        ShopBench.FakeFiles files = new();
        ShopBench.FakeReader reader = new();
        await WorkAsync(files, reader);
        DayReport second = await WorkAsync(files, reader);
        Assert.Equal(1, files.Made);
        Assert.Equal(2, reader.Read.Count);
        Assert.Equal(RunState.Completed, Assert.Single(second.Runs).State);
    }

    [Fact]
    public async Task A_run_folder_that_was_touched_is_made_again()
    {
        PutTwo();
        ShopBench.FakeFiles files = new();
        await WorkAsync(files);
        await File.AppendAllTextAsync(Path.Combine(shop.Folder.Runs, "R-20261125-01", "run.json"), "touched");
        await WorkAsync(files);
        Assert.Equal(2, files.Made);
    }

    [Fact]
    public async Task Changed_artwork_dissolves_its_run_and_plans_all_its_items_anew()
    {
        PutTwo();
        await WorkAsync();
        await File.WriteAllTextAsync(Path.Combine(shop.Folder.Orders, "TW-2", "board.pdf"), "other artwork");
        DayReport report = await WorkAsync();
        Assert.Equal("R-20261125-02", Assert.Single(report.Runs).Run.Id);
        Assert.Equal([("R-20261125-01", RunState.Aborted), ("R-20261125-02", RunState.Completed)], (await shop.Store.RunsAsync(None)).Select(r => (r.Run.Id, r.State)));
        Assert.All(await ItemsAsync(), i => Assert.Equal((ItemState.Completed, "R-20261125-02"), (i.State, i.RunId)));
    }

    [Fact]
    public async Task Hopeless_artwork_holds_its_item_and_the_rest_of_the_day_is_done()
    {
        PutTwo();
        InputFault hopeless = new("board.pdf", null, "xref", "nothing", "a PDF that is whole");
        ShopBench.FakeReader reader = new();
        int call = 0;
        ShopBench.FakeReader second = new(_ => call++ == 0 ? hopeless : null);
        DayReport report = await WorkAsync(reader: second);
        Assert.Equal([hopeless], Assert.Single(report.Held).Faults);
        Assert.Equal(["TW-2-1"], Assert.Single(report.Runs).Run.Items.Select(i => i.ItemId));
        Assert.Equal(2, report.Quotes.Count);

        // Taking orders again leaves it held, with its reason.
        await shop.TakeOrders().TakeAsync(None);
        Assert.Equal([hopeless], (await ItemsAsync())[0].Faults);

        // What stood in the way has gone: the next day takes the item up again.
        DayReport next = await WorkAsync(reader: reader);
        Assert.Empty(next.Held);
        Assert.Equal(2, next.Runs.Count);
    }

    [Fact]
    public async Task Ink_that_cannot_be_measured_holds_its_item_alone()
    {
        PutTwo();
        InputFault missing = new("board.pdf", null, "Ghostscript", "no program gs", "the Debian package ghostscript");
        DayReport report = await WorkAsync(measure: new(id => id == "TW-1-1" ? missing : null));
        Assert.Equal([missing], Assert.Single(report.Held).Faults);
        Assert.Equal(["TW-2-1"], Assert.Single(report.Runs).Run.Items.Select(i => i.ItemId));
        Assert.Empty((await WorkAsync()).Held);
    }

    [Fact]
    public async Task Equal_shops_give_equal_runs_to_the_byte()
    {
        PutTwo();
        await WorkAsync();
        using ShopBench other = new();
        Put(other, "TW-1");
        Put(other, "TW-2");
        await WorkAsync(other);
        Assert.Equal(
            System.Text.Json.JsonSerializer.Serialize((await shop.Store.RunsAsync(None))[0].Run, ShopJson.Compact),
            System.Text.Json.JsonSerializer.Serialize((await other.Store.RunsAsync(None))[0].Run, ShopJson.Compact));
    }

    [Fact]
    public async Task A_full_disk_aborts_the_run_in_words_and_the_quotes_are_still_written()
    {
        PutTwo();
        DayReport report = await WorkAsync(new ShopBench.FakeFiles(_ => throw new IOException("No space left on device")));
        Assert.Equal(["R-20261125-01"], report.Aborted);
        Assert.Contains("No space left", Assert.Single(report.Faults).Found, StringComparison.Ordinal);
        Assert.Equal(2, report.Quotes.Count);
        RunRecord run = Assert.Single(await shop.Store.RunsAsync(None));
        Assert.Equal(RunState.Aborted, run.State);
        Assert.Empty(run.Files);

        // With room again the same run is made.
        Assert.Equal(RunState.Completed, Assert.Single((await WorkAsync()).Runs).State);
    }

    [Fact]
    public async Task A_cancelled_run_is_aborted_and_can_be_made_again()
    {
        PutTwo();
        using CancellationTokenSource gone = new();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => WorkAsync(
            new ShopBench.FakeFiles(_ =>
            {
                gone.Cancel();
                return null;
            }),
            cancellation: gone.Token));
        Assert.Equal(RunState.Aborted, Assert.Single(await shop.Store.RunsAsync(None)).State);
        Assert.False(Directory.Exists(Path.Combine(shop.Folder.Runs, "R-20261125-01")));
        Assert.Equal(RunState.Completed, Assert.Single((await WorkAsync()).Runs).State);
    }

    [Fact]
    public async Task What_a_kill_left_is_put_right_at_the_next_start()
    {
        PutTwo();
        await WorkAsync();
        RunRecord run = Assert.Single(await shop.Store.RunsAsync(None));
        await shop.Store.SaveRunsAsync([run with { State = RunState.InProgress, Files = [] }], ItemState.Planned, None);
        string scratch = Directory.CreateDirectory(Path.Combine(shop.Folder.Runs, ".R-20261125-01.part")).FullName;

        ShopBench.FakeFiles files = new();
        shop.Store.RunStates.Clear();
        using MakeRun make = new(shop.Folder, shop.Catalogue, shop.Store, files, shop.Board);
        Assert.Equal(RunState.Completed, (await make.MakeAsync("R-20261125-01", None)).Value.State);
        Assert.Equal([RunState.Waiting, RunState.InProgress, RunState.Completed], shop.Store.RunStates.Select(s => s.State));
        Assert.False(Directory.Exists(scratch));
        Assert.Equal(1, files.Made);
    }

    [Fact]
    public async Task A_quote_adds_up_and_names_what_it_does_not_price()
    {
        shop.Put("TW-1", Samples.Order("TW-1", ShopBench.Item("TW-1-1"), ShopBench.Item("TW-1-2", "two.pdf"), ShopBench.Item("TW-1-3", "three.pdf", "unobtainium")));
        DayReport report = await WorkAsync();
        Quote quote = (await new QuoteOrder(shop.Folder, shop.Catalogue, shop.Store, new ShopBench.FakeDocuments(), shop.Clock).QuoteAsync("TW-1", None)).Value;
        Assert.Equal(Money.Sum(report.Runs.Select(r => r.Run.Cost.Price)), quote.Net);
        Assert.Equal(quote.Net, Money.Sum(quote.Lines.Select(l => l.Price ?? default)));
        Assert.Equal(quote.Gross, quote.Net + quote.Tax);
        Assert.Equal([true, true, false], quote.Lines.Select(l => l.Price is not null));
        Assert.Contains("unobtainium", quote.Lines[2].Note, StringComparison.Ordinal);
        Assert.Equal(ShopBench.Today.AddDays(30), quote.ValidUntil);
    }

    [Fact]
    public async Task A_quote_that_cannot_be_written_leaves_nothing()
    {
        PutTwo();
        await WorkAsync();
        Directory.Delete(shop.Folder.Quotes, recursive: true);
        await File.WriteAllTextAsync(shop.Folder.Quotes, "a file where a folder is wanted");
        Reading<Quote> reading = await new QuoteOrder(shop.Folder, shop.Catalogue, shop.Store, new ShopBench.FakeDocuments(), shop.Clock).QuoteAsync("TW-1", None);
        Assert.False(reading.IsTaken);
        Assert.Equal("a file where a folder is wanted", await File.ReadAllTextAsync(shop.Folder.Quotes));
    }

    [Fact]
    public async Task A_run_or_order_that_does_not_exist_is_refused_in_words()
    {
        using MakeRun make = new(shop.Folder, shop.Catalogue, shop.Store, new ShopBench.FakeFiles(), shop.Board);
        Assert.Contains("no run of that id", Assert.Single((await make.MakeAsync("R-1", None)).Faults).ToString(), StringComparison.Ordinal);
        QuoteOrder quote = new(shop.Folder, shop.Catalogue, shop.Store, new ShopBench.FakeDocuments(), shop.Clock);
        Assert.Contains("no order of that id", Assert.Single((await quote.QuoteAsync("../../x", None)).Faults).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_board_gives_the_latest_first_and_then_what_comes()
    {
        ProgressBoard board = new();
        board.Report(new("R-2", "b", 10));
        board.Report(new("R-1", "a", 20));
        board.Report(new("R-2", "b", 30));
        Assert.Equal(30, board.Latest("R-2")?.DonePercent);
        Assert.Null(board.Latest("R-3"));

        List<MakeProgress> seen = [];
        await foreach (MakeProgress progress in board.WatchAsync(None))
        {
            seen.Add(progress);
            if (seen.Count == 2)
                board.Report(new("R-1", "a", 40));
            if (seen.Count == 3)
                break;
        }

        Assert.Equal([("R-1", 20.0), ("R-2", 30.0), ("R-1", 40.0)], seen.Select(p => (p.RunId, p.DonePercent)));
    }

    private void PutTwo()
    {
        Put(shop, "TW-1");
        Put(shop, "TW-2");
    }

    private static void Put(ShopBench bench, string id)
    {
        Order order = Samples.Order(id, ShopBench.Item(Invariant($"{id}-1")));
        if (!Directory.Exists(Path.Combine(bench.Folder.Orders, id)))
            bench.Put(id, order);
    }

    private Task<DayReport> WorkAsync(
        ShopBench.FakeFiles? files = null, ShopBench.FakeReader? reader = null, ShopBench.FakeMeasure? measure = null, CancellationToken cancellation = default) =>
        WorkAsync(shop, files, reader, measure, cancellation);

    internal static async Task<DayReport> WorkAsync(
        ShopBench bench, ShopBench.FakeFiles? files = null, ShopBench.FakeReader? reader = null, ShopBench.FakeMeasure? measure = null, CancellationToken cancellation = default)
    {
        ShopBench.FakeRenderer renderer = new();
        ShopBench.FakeDocuments documents = new();
        using MakeRun make = new(bench.Folder, bench.Catalogue, bench.Store, files ?? new(), bench.Board);
        PairPictures pairs = new(new IntakeLimits(Path.Combine(Path.GetTempPath(), "laydown-pairs")));
        LayerServices layers = LayerServices.Of(
            new LookShelf(bench.Folder), bench.Catalogue, bench.Store, new ItemPlaneFiles(renderer), pairs, new LookPictures(), new ColourFiles(), bench.Clock);
        ShopServices services = new(
            bench.Folder.Root, bench.Catalogue, bench.Store, renderer, documents, bench.TakeOrders(),
            new CheckItems(bench.Folder, bench.Catalogue, bench.Store, reader ?? new(), renderer),
            new PlanRuns(bench.Catalogue, bench.Store, measure ?? new()), make,
            new QuoteOrder(bench.Folder, bench.Catalogue, bench.Store, documents, bench.Clock), bench.Board,
            ColourServices.Of(
                bench.Folder, bench.Catalogue, bench.Store, renderer, new ScreenPictures(), new ColourFiles(), new ChartFiles(Path.Combine(bench.Folder.Root, "scratch")), bench.Clock),
            layers,
            ProofServices.Of(bench.Folder, layers, new(bench.Catalogue, bench.Store, pairs), new SqliteProofStore(bench.Folder.StoreFile), bench.Clock))
        {
            Clock = bench.Clock,
            Press = PressServices.Of(bench.Catalogue, bench.Store, new SqlitePressCareBook(bench.Folder.StoreFile), new SqliteStockRoom(bench.Folder.StoreFile), new PressPapers(), bench.Clock),
            Sheets = SheetServices.Of(bench.Folder, bench.Catalogue, bench.Store, new PressPlanes(bench.Folder.Pyramids), new LookPictures()),
        };
        return await new WorkDay(services, bench.Clock).WorkAsync(ShopBench.Today, null, cancellation);
    }

    private async Task<IReadOnlyList<ItemRecord>> ItemsAsync() => [.. (await shop.Store.OrdersAsync(None)).SelectMany(o => o.Items)];
}
