using System.Net;
using System.Net.Http.Headers;
using System.Net.ServerSentEvents;
using System.Text.Json;
using Laydown.Web.Tests.Sample;

namespace Laydown.Web.Tests.Http;

/// <summary>Pricing over HTTP: at once where one waits, as events where one wants to hear how far it is; the page says it too and ends with who looks.</summary>
public sealed class PricingHttpLawTests
{
    [Fact]
    public async Task Events_tell_each_price_before_it_is_reckoned_and_end_with_the_answer()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        string plain = await served.Client.GetStringAsync("/api/orders/TW-1041/quote?breaks=1,10", TestContext.Current.CancellationToken);
        List<SseItem<string>> events = await HeardAsync(served, "/api/orders/TW-1041/quote?breaks=1,10");
        List<JsonElement> steps = [.. events.SkipLast(1).Select(e => JsonElement.Parse(e.Data))];
        Assert.All(events.SkipLast(1), e => Assert.Equal("pricing", e.EventType));
        Assert.Equal(Enumerable.Range(0, steps.Count), steps.Select(s => s.GetProperty("done").GetInt32()));
        Assert.All(steps, s => Assert.Equal((steps.Count, "TW-1041"), (s.GetProperty("all").GetInt32(), s.GetProperty("orderId").GetString())));
        Assert.Equal("quote", events[^1].EventType);
        Assert.True(JsonElement.DeepEquals(JsonElement.Parse(plain), JsonElement.Parse(events[^1].Data)));
        Assert.Equal(2 * JsonElement.Parse(plain).GetProperty("result").GetProperty("quote").GetProperty("lines").EnumerateArray().Count(l => l.GetProperty("breaks").ValueKind == JsonValueKind.Array), steps.Count);

        List<SseItem<string>> ways = await HeardAsync(served, "/api/orders/TW-1041/ways");
        Assert.Equal(("quote-ways", JsonElement.Parse(ways[0].Data).GetProperty("all").GetInt32()), (ways[^1].EventType, ways.Count - 1));
    }

    [Fact]
    public async Task What_cannot_be_priced_is_told_by_field_in_both_ways()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        SseItem<string> refused = Assert.Single(await HeardAsync(served, "/api/orders/TW-1041/quote?breaks=0"));
        Assert.Equal(("faults", "breaks"), (refused.EventType, JsonElement.Parse(refused.Data).GetProperty("result").GetProperty("faults")[0].GetProperty("field").GetString()));
        using HttpResponseMessage plain = await served.Client.GetAsync("/api/orders/TW-1041/quote?breaks=0", TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.BadRequest, plain.StatusCode);
    }

    [Theory]
    [InlineData("/orders/TW-1041/quote?breaks=1,10")]
    [InlineData("/api/orders/TW-1041/quote?breaks=1,10")]
    public async Task How_far_it_is_comes_while_it_is_priced_and_who_goes_ends_it(string address)
    {
        HeldInk ink = new();
        await using ServedShop served = await ServedShop.OpenAsync(ink);
        using HttpRequestMessage request = Asked(address);
        HttpResponseMessage answer = await served.Client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, TestContext.Current.CancellationToken);
        using (StreamReader reader = new(await answer.Content.ReadAsStreamAsync(TestContext.Current.CancellationToken)))
        {
            // The first piece is being measured and will be until it is left: what comes now comes on the way.
            string? line;
            do
                line = await reader.ReadLineAsync(TestContext.Current.CancellationToken);
            while (line is not null && !line.Contains("at 1 piece", StringComparison.Ordinal));
            Assert.NotNull(line);
        }

        await ink.Begun.WaitAsync(TestContext.Current.CancellationToken);
        answer.Dispose();
        await ink.Left.WaitAsync(TestContext.Current.CancellationToken);
        await served.StopAsync();
    }

    private static HttpRequestMessage Asked(string address)
    {
        HttpRequestMessage request = new(HttpMethod.Get, address);
        request.Headers.Accept.Add(new MediaTypeWithQualityHeaderValue(address.StartsWith("/api", StringComparison.Ordinal) ? "text/event-stream" : "text/html"));
        return request;
    }

    private static async Task<List<SseItem<string>>> HeardAsync(ServedShop served, string address)
    {
        using HttpRequestMessage request = Asked(address);
        using HttpResponseMessage answer = await served.Client.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.Equal("text/event-stream", answer.Content.Headers.ContentType?.MediaType);
        List<SseItem<string>> events = [];
        await foreach (SseItem<string> one in SseParser.Create(await answer.Content.ReadAsStreamAsync(TestContext.Current.CancellationToken)).EnumerateAsync(TestContext.Current.CancellationToken))
            events.Add(one);
        return events;
    }
}
