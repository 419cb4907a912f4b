using System.Text.Json;
using Laydown.Cli;
using Laydown.Formats.Json;
using Laydown.Measures;
using Laydown.Plan.Costs;
using Laydown.Plan.Orders;
using Laydown.Shop.Orders;
using Xunit;

namespace Laydown.Edges.Tests.CommandLines;

/// <summary>Quotes at several quantities and in several ways, on a shop on disk.</summary>
public sealed class QuoteCommandLawTests
{
    [Fact]
    public async Task Quantities_cost_less_each_and_change_nothing_that_was_planned()
    {
        using CliShop shop = new();
        JsonElement runs = await PlannedAsync(shop);
        (int code, JsonElement answer) = await shop.AskAsync("quote", "TW-7001", "--breaks", "1,10,50");
        Assert.Equal(0, code);
        JsonElement line = Assert.Single(answer.GetProperty("quote").GetProperty("lines").EnumerateArray());
        List<JsonElement> breaks = [.. line.GetProperty("breaks").EnumerateArray()];
        Assert.Equal([1, 10, 50], breaks.Select(b => b.GetProperty("pieces").GetInt32()));
        long[] each = [.. breaks.Select(b => b.GetProperty("each").GetProperty("cents").GetInt64())];
        Assert.True(each[0] > each[1] && each[1] > each[2]);

        // One piece by itself is what the order is: its price is the line's.
        Assert.Equal(line.GetProperty("price").GetProperty("cents").GetInt64(), breaks[0].GetProperty("price").GetProperty("cents").GetInt64());
        Assert.True(File.Exists(answer.GetProperty("file").GetString()));
        Assert.Equal(runs.GetRawText(), (await shop.AskAsync("runs")).Answer.GetProperty("runs").GetRawText());
    }

    [Fact]
    public async Task What_is_priced_is_said_on_the_error_stream_with_its_number_and_the_answer_stays_clean()
    {
        using CliShop shop = new();
        await PlannedAsync(shop);
        await using StringWriter output = new(), error = new();
        Assert.Equal(0, await CommandLine.RunAsync(["quote", "TW-7001", "--breaks", "1,10", "--json", "--shop", shop.Folder, "--today", CliShop.Today], output, error, CancellationToken.None));
        string item = JsonElement.Parse(output.ToString()).GetProperty("quote").GetProperty("lines")[0].GetProperty("itemId").GetString()!;
        Assert.Equal(
            [Invariant($"Pricing TW-7001: {item} at 1 piece, 1 of 2 (Ctrl-C leaves it)."), Invariant($"Pricing TW-7001: {item} at 10 pieces, 2 of 2 (Ctrl-C leaves it).")],
            error.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries));
    }

    [Fact]
    public async Task Ways_are_compared_each_with_a_price_or_a_reason()
    {
        using CliShop shop = new();
        await PlannedAsync(shop);
        JsonElement answer = (await shop.AskAsync("quote", "TW-7001", "--compare", "--stock", "acrylic-clear-5")).Answer;
        List<JsonElement> ways = [.. answer.GetProperty("scenarios").EnumerateArray()];
        Assert.Equal(["as planned", "by itself"], ways.Take(2).Select(w => w.GetProperty("name").GetString()));
        Assert.Equal(ways[0].GetProperty("price").GetRawText(), ways[1].GetProperty("price").GetRawText());
        Assert.All(ways, w => Assert.NotEmpty(w.GetProperty("because").GetString()!));
        Assert.All(ways.Where(w => w.GetProperty("price").ValueKind == JsonValueKind.Object), w => Assert.Matches("^[a-z-]+ on [a-z0-9-]+, [0-9]+ sheets?", w.GetProperty("because").GetString()!));
        Assert.True(ways.Count(w => w.GetProperty("price").ValueKind == JsonValueKind.Object) >= 3);
        Assert.Contains(ways, w => w.GetProperty("name").GetString()!.Contains("mode", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Quantities_and_stocks_that_cannot_be_are_refused()
    {
        using CliShop shop = new();
        await PlannedAsync(shop);
        Assert.Equal(2, (await shop.AskAsync("quote", "TW-7001", "--breaks", "1,ten")).Code);
        Assert.Equal(3, (await shop.AskAsync("quote", "TW-7001", "--breaks", "0")).Code);
        Assert.Equal(3, (await shop.AskAsync("quote", "TW-none", "--breaks", "1")).Code);
        Assert.Equal(3, (await shop.AskAsync("quote", "TW-7001", "--compare", "--stock", "gold")).Code);
    }

    [Fact]
    public async Task A_quote_is_reckoned_from_a_file_alone_and_written_as_a_paper()
    {
        using CliShop shop = new();
        QuoteJob job = Job(new Laydown.Intake.Orders.CatalogueReader().Read(Path.Combine(shop.Folder, "catalogue")).Value.Rates);
        string file = Path.Combine(shop.Folder, "job.json"), pdf = Path.Combine(shop.Folder, "job.pdf");
        File.WriteAllBytes(file, LaydownJson.ToBytes(job));
        (int code, JsonElement answer) = await shop.AskAsync("quote", "--file", file, "--out", pdf);
        Assert.Equal(0, code);
        JsonElement quote = answer.GetProperty("quote"), line = Assert.Single(quote.GetProperty("lines").EnumerateArray());
        Assert.True(File.ReadAllBytes(pdf).AsSpan().StartsWith("%PDF"u8));

        // By hand: 5 boards at 20.00, 10 ml at 96.00/l, 4 % spoilage of 100.96; 15 min at 64.00 and at 34.00; 3 + 8 × 0.4 min drilled; 12.00 + 4 × 3.00 bought.
        long[] amounts = [.. answer.GetProperty("costs")[0].GetProperty("lines").EnumerateArray().Select(l => l.GetProperty("amount").GetProperty("cents").GetInt64())];
        Assert.Equal([10_000L, 96, 404, 1600, 850, 391, 2400], amounts);
        decimal cost = amounts.Sum() / 100m, overhead = Math.Round(cost * 0.22m, 2), price = Math.Round((cost + overhead) / 0.72m, 2);
        Assert.Equal(price, line.GetProperty("price").GetProperty("cents").GetInt64() / 100m);
        Assert.Equal(quote.GetProperty("gross").GetProperty("cents").GetInt64(), quote.GetProperty("net").GetProperty("cents").GetInt64() + quote.GetProperty("tax").GetProperty("cents").GetInt64());
        Assert.Equal([1, 100], line.GetProperty("breaks").EnumerateArray().Select(b => b.GetProperty("pieces").GetInt32()));
    }

    [Fact]
    public async Task A_file_that_cannot_be_quoted_is_refused_by_field_and_writes_nothing()
    {
        using CliShop shop = new();
        QuoteJob job = Job(new Laydown.Intake.Orders.CatalogueReader().Read(Path.Combine(shop.Folder, "catalogue")).Value.Rates);
        string file = Path.Combine(shop.Folder, "job.json"), pdf = Path.Combine(shop.Folder, "job.pdf");
        QuoteJobItem item = job.Items[0];
        foreach ((QuoteJob bad, string field) in new[]
        {
            (job with { Items = [item with { Materials = [item.Materials[0] with { Each = -0.1m }] }] }, "/items/0/materials/0/each"),
            (job with { Items = [item with { Pieces = 0 }] }, "/items/0/pieces"),
            (job with { Items = [item, item] }, "/items/1/id"),
            (job with { Items = [item with { Inks = [item.Inks[0] with { EachMl = -1 }] }] }, "/items/0/inks/0/eachMl"),
            (job with { Rates = job.Rates with { FinishingRates = [] } }, "/items/0/finishing/0/kind"),
            (job with { Rates = job.Rates with { MarginPercent = 100 } }, "/rates/marginPercent"),
        })
        {
            File.WriteAllBytes(file, LaydownJson.ToBytes(bad));
            (int code, JsonElement answer) = await shop.AskAsync("quote", "--file", file, "--out", pdf);
            Assert.Equal((3, field), (code, answer.GetProperty("faults")[0].GetProperty("field").GetString()));
            Assert.False(File.Exists(pdf));
        }

        Assert.Equal(3, (await shop.AskAsync("quote", "--file", Path.Combine(shop.Folder, "none.json"))).Code);
        Assert.Equal(2, (await shop.AskAsync("quote")).Code);
    }

    private static QuoteJob Job(ShopRates rates) => new("Tidewrack Signs", "Q-1", "Saltmarsh Observatory (invented)", new(2026, 11, 26), rates, Money.FromUnits(64.0),
        [new("Q-1-1", "Trail sign, 600 × 400 mm", 4, 7, 2, [new("Board", Money.FromUnits(20.0), 1, 0.8m, Whole: true)], [new("cyan", Money.FromUnits(96.0), 2, 2)],
            [new(FinishingKind.Drill, 2)], [new("posts", Money.FromUnits(12.0), Money.FromUnits(3.0))])], [1, 100]);

    private static async Task<JsonElement> PlannedAsync(CliShop shop)
    {
        shop.Put("TW-7001", (CliShop.Board("TW-7001-1", "a.pdf"), CliShop.Pdf()));
        await shop.AskAsync("plan");
        return (await shop.AskAsync("runs")).Answer.GetProperty("runs");
    }
}
