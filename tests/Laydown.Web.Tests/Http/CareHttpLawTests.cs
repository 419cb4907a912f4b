using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using Laydown.Web.Tests.Sample;

namespace Laydown.Web.Tests.Http;

/// <summary>Upkeep and stock room over HTTP: the same answers as on the command line, refusals with field, found and wanted.</summary>
public sealed class CareHttpLawTests
{
    [Fact]
    public async Task A_reading_changes_the_plan_and_one_over_the_capacity_does_not()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        await PostAsync(served, "/api/upkeep/long-belt/reading", """{"tanks":[{"tankId":"C","levelMl":1234}],"done":["lamps"]}""", HttpStatusCode.OK);
        JsonElement refused = await PostAsync(served, "/api/upkeep/long-belt/reading", """{"tanks":[{"tankId":"C","levelMl":2401}]}""", HttpStatusCode.BadRequest);
        Assert.Equal(("/tanks/0/levelMl", "2401 ml in C"), (Fault(refused).GetProperty("field").GetString(), Fault(refused).GetProperty("found").GetString()));
        JsonElement plan = await served.Client.GetFromJsonAsync<JsonElement>("/api/upkeep/long-belt");
        Assert.Equal(1234, plan.GetProperty("result").GetProperty("tanks")[0].GetProperty("levels")[0].GetProperty("levelMl").GetDouble());

        // What is written down tells which levels were read, and the mark of the shelf that a new one must name.
        JsonElement written = (await served.Client.GetFromJsonAsync<JsonElement>("/api/upkeep/long-belt/reading")).GetProperty("result");
        Assert.Equal([true, false], written.GetProperty("levels").EnumerateArray().Take(2).Select(l => l.TryGetProperty("at", out JsonElement at) && at.ValueKind == JsonValueKind.String));
        string mark = written.GetProperty("shelf").GetString()!, shelf = """{"packs":[{"lot":"L-1","role":"cyan","ml":900}],"shelf":"MARK"}""".Replace("MARK", mark, StringComparison.Ordinal);
        await PostAsync(served, "/api/upkeep/long-belt/reading", shelf, HttpStatusCode.OK);
        Assert.Equal("/shelf", Fault(await PostAsync(served, "/api/upkeep/long-belt/reading", shelf, HttpStatusCode.BadRequest)).GetProperty("field").GetString());
    }

    [Fact]
    public async Task Goods_come_in_are_kept_back_for_a_run_and_taken()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        JsonElement run = (await served.Client.GetFromJsonAsync<JsonElement>("/api/runs")).GetProperty("result").GetProperty("runs")[0].GetProperty("run");
        string id = run.GetProperty("id").GetString()!, stock = run.GetProperty("stockId").GetString()!;
        await PostAsync(served, "/api/stock/receive", $$"""{"stockId":"{{stock}}","quantity":500,"place":"rack 1","by":"Ann"}""", HttpStatusCode.OK);
        await PostAsync(served, $"/api/stock/runs/{id}/reserve", "", HttpStatusCode.OK);
        JsonElement taken = await PostAsync(served, $"/api/stock/runs/{id}/take?place=rests", "", HttpStatusCode.OK);
        Assert.True(taken.GetProperty("result").GetProperty("lots")[0].GetProperty("onHand").GetDecimal() < 500);
        Assert.Equal(HttpStatusCode.OK, (await served.Client.GetAsync("/stock/labels.pdf")).StatusCode);
    }

    [Theory]
    [InlineData("/api/stock/moves", "[null]")]
    [InlineData("/api/stock/moves", """[{"kind":"consume","lotId":"L-9","quantity":1,"at":"2026-11-26T08:00:00Z","by":"Ann"}]""")]
    [InlineData("/api/stock/moves", """[{"kind":"dance","lotId":"L-9","quantity":1,"at":"2026-11-26T08:00:00Z","by":"Ann"}]""")]
    [InlineData("/api/stock/receive", """{"stockId":"gold","quantity":1,"place":"x"}""")]
    [InlineData("/api/stock/receive", """{"stockId":"fluted-5","quantity":-1,"place":"x"}""")]
    [InlineData("/api/stock/receive", "null")]
    [InlineData("/api/stock/reorder", """{"stockId":"gold","at":4,"to":null}""")]
    [InlineData("/api/stock/reorder", """{"stockId":"fluted-5","at":4}""")]
    [InlineData("/api/stock/runs/R-9/reserve", "")]
    [InlineData("/api/stock/runs/R-20261126-01/dance", "")]
    [InlineData("/api/upkeep/no-press/reading", "{}")]
    [InlineData("/api/upkeep/long-belt/reading", """{"pouredMl":{"C":-1}}""")]
    [InlineData("/api/upkeep/long-belt/reading", """{"done":["dance"]}""")]
    public async Task What_cannot_be_is_refused(string path, string body)
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        Assert.NotEqual("", Fault(await PostAsync(served, path, body, HttpStatusCode.BadRequest)).GetProperty("wanted").GetString());
        Assert.Equal(0, (await served.Client.GetFromJsonAsync<JsonElement>("/api/stock")).GetProperty("result").GetProperty("lots").GetArrayLength());
    }

    private static JsonElement Fault(JsonElement answer) => answer.GetProperty("result").GetProperty("faults")[0];

    private static async Task<JsonElement> PostAsync(ServedShop served, string path, string body, HttpStatusCode wanted)
    {
        using StringContent content = new(body, Encoding.UTF8, "application/json");
        using HttpResponseMessage answer = await served.Client.PostAsync(path, content);
        string text = await answer.Content.ReadAsStringAsync();
        Assert.True(wanted == answer.StatusCode, text);
        return JsonDocument.Parse(text).RootElement;
    }
}
