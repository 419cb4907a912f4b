using Laydown.Measures;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Shop.Colour;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Edges.Tests.UseCases;

/// <summary>Pricing tells before each price what it reckons and how many there are, renders a piece once, and ends where it is left.</summary>
public sealed class PricedStepsLawTests : IDisposable
{
    private static readonly CancellationToken None = CancellationToken.None;
    private readonly ShopBench shop = new();

    public void Dispose() => shop.Dispose();

    [Fact]
    public async Task Every_quantity_of_every_item_is_told_with_its_number()
    {
        await PlannedAsync();
        Heard told = new();
        Assert.True((await Trying(new ShopBench.FakeMeasure()).BreaksAsync("TW-1", [1, 10], None, told)).IsTaken);
        Assert.Equal(
            [new("TW-1", "TW-1-1 at 1 piece", 0, 4), new("TW-1", "TW-1-1 at 10 pieces", 1, 4), new("TW-1", "TW-1-2 at 1 piece", 2, 4), new("TW-1", "TW-1-2 at 10 pieces", 3, 4)],
            told.All);
        Assert.Equal("TW-1-2 at 10 pieces, 4 of 4", told.All[3].ToString());
    }

    [Fact]
    public async Task Every_way_is_told_with_its_number_and_under_the_name_it_gets()
    {
        await PlannedAsync();
        Heard told = new();
        IReadOnlyList<QuoteScenario> ways = (await Trying(new ShopBench.FakeMeasure()).CompareAsync("TW-1", ["acrylic-clear-5"], None, told)).Value;
        int all = 2 + shop.Catalogue.Presses.Sum(p => p.Modes.Count);
        Assert.Equal(Enumerable.Range(0, all), told.All.Select(s => s.Done));
        Assert.All(told.All, s => Assert.Equal(all, s.All));
        Assert.Equal(ways.Where(w => w.Name != "as planned").Select(w => w.Name), told.All.Select(s => s.What));
    }

    [Fact]
    public async Task A_piece_is_rendered_once_for_each_print_condition_however_often_it_is_priced()
    {
        await PlannedAsync();
        Gate measure = new();
        TryOrder trying = Trying(measure);
        IReadOnlyList<QuoteBreak> first = (await trying.BreaksAsync("TW-1", [1, 10], None)).Value[0].Breaks;
        Assert.Equal(2, measure.Times);
        Assert.Equal(first, (await trying.BreaksAsync("TW-1", [1, 10], None)).Value[0].Breaks);
        Assert.Equal(2, measure.Times);
    }

    [Fact]
    public async Task Who_leaves_ends_the_pricing_and_no_paper_is_written()
    {
        await PlannedAsync();
        string paper = Path.Combine(shop.Folder.Quotes, "TW-1.pdf");
        Assert.True(File.Exists(paper));
        File.Delete(paper);
        using CancellationTokenSource left = new();
        Heard told = new(step =>
        {
            if (step.Done == 1)
                left.Cancel();
        });
        QuoteOrder quote = new(shop.Folder, shop.Catalogue, shop.Store, new ShopBench.FakeDocuments(), shop.Clock, Trying(new Gate()));
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => quote.QuoteAsync("TW-1", [1, 10], left.Token, told));
        Assert.Equal([0, 1], told.All.Select(s => s.Done));
        Assert.False(File.Exists(paper));
    }

    private TryOrder Trying(IInkMeasure measure) => new(shop.Catalogue, shop.Store, measure);

    private async Task PlannedAsync()
    {
        shop.Put("TW-1", Samples.Order("TW-1", ShopBench.Item("TW-1-1"), ShopBench.Item("TW-1-2", "other.pdf")));
        await DayLawTests.WorkAsync(shop);
    }

    private sealed class Heard(Action<PricedStep>? also = null) : IProgress<PricedStep>
    {
        public List<PricedStep> All { get; } = [];

        public void Report(PricedStep value)
        {
            All.Add(value);
            also?.Invoke(value);
        }
    }

    private sealed class Gate : IInkMeasure
    {
        private readonly ShopBench.FakeMeasure inner = new();

        public int Times { get; private set; }

        public Task<Reading<IReadOnlyList<LayerInk>>> MeasureAsync(ItemRecord item, PrintCondition condition, InkSet inkSet, string profilePath, CancellationToken cancellation)
        {
            cancellation.ThrowIfCancellationRequested();
            Times++;
            return inner.MeasureAsync(item, condition, inkSet, profilePath, cancellation);
        }
    }
}
