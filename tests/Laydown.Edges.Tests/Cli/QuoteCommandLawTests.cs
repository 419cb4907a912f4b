using System.Text.Json;

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
    public async Task Ways_are_compared_each_with_a_price_or_a_reason()
    {
        using CliShop shop = new();
        await PlannedAsync(shop);
        JsonElement answer = (await shop.AskAsync("quote", "TW-7001", "--compare", "--stock", "acrylic-clear-5")).Answer;
        List<JsonElement> ways = [.. answer.GetProperty("scenarios").EnumerateArray()];
        Assert.Equal(["as planned", "by itself"], ways.Take(2).Select(w => w.GetProperty("name").GetString()));
        Assert.Equal(ways[0].GetProperty("price").GetRawText(), ways[1].GetProperty("price").GetRawText());
        Assert.All(ways, w => Assert.NotEmpty(w.GetProperty("because").GetString()!));
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

    private static async Task<JsonElement> PlannedAsync(CliShop shop)
    {
        shop.Put("TW-7001", (CliShop.Board("TW-7001-1", "a.pdf"), CliShop.Pdf()));
        await shop.AskAsync("plan");
        return (await shop.AskAsync("runs")).Answer.GetProperty("runs");
    }
}
