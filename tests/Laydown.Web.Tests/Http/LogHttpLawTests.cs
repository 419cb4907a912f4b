using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Laydown.Web.Tests.Sample;

namespace Laydown.Web.Tests.Http;

/// <summary>The log over HTTP: what the command line does, and clear refusals.</summary>
public sealed class LogHttpLawTests
{
    private static readonly DateOnly Day = new(2026, 11, 26);

    [Fact]
    public async Task An_entry_is_kept_found_by_page_and_told_on_its_page()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        HttpResponseMessage kept = await served.Client.PostAsJsonAsync("/api/log", new { kind = "note", runId = "R-20261126-01", note = "belt cleaned", at = "2026-11-26T09:00:00Z" });
        Assert.Equal(HttpStatusCode.Created, kept.StatusCode);
        JsonElement page = (await served.Client.GetFromJsonAsync<JsonElement>("/api/log?kind=Note&rows=10")).GetProperty("result");
        Assert.Equal(1, page.GetProperty("all").GetInt32());
        Assert.Contains("belt cleaned", await served.Client.GetStringAsync("/runs/R-20261126-01/log"), StringComparison.Ordinal);
        Assert.Contains("1 such run would have taken", await served.Client.GetStringAsync(Invariant($"/runs/{SampleLog.Run}")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_cannot_be_is_refused_by_field_and_keeps_nothing()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        int before = await AllAsync(served);
        Assert.Equal("/runId", await FieldAsync(served, new { kind = "start", runId = "R-none" }));
        Assert.Equal("/kind", await FieldAsync(served, new { kind = "stop", runId = "R-20261126-01", stop = new { good = 1, spoiled = 0, done = true } }));
        Assert.Equal("/stop/spoiled", await FieldAsync(served, new { kind = "stop", runId = "R-20261126-01", stop = new { good = 1, spoiled = -1, done = true } }));
        Assert.Equal("/ink/tankId", await FieldAsync(served, new { kind = "ink", runId = "R-20261126-01", ink = new { levelMl = 5 } }));
        Assert.Equal("/stop", await FieldAsync(served, new { kind = "note", runId = "R-20261126-01", note = "x", stop = new { good = 1, spoiled = 0, done = true } }));
        Assert.Equal(HttpStatusCode.BadRequest, (await served.Client.PostAsJsonAsync("/api/log", new { kind = "nothing" })).StatusCode);
        Assert.Equal(HttpStatusCode.BadRequest, (await served.Client.GetAsync("/api/log?rows=0")).StatusCode);
        Assert.Equal(before, await AllAsync(served));
    }

    [Fact]
    public async Task Warming_up_opens_every_page_it_names_and_changes_nothing()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        int before = await AllAsync(served);
        string kept = Path.Combine(Path.GetDirectoryName(new Laydown.Shop.ShopFolder(served.Shop.Services.Folder).StoreFile)!, "week.json");
        await WarmUp.StoreAsync(served.Shop.Services, TestContext.Current.CancellationToken);
        Assert.Equal(WarmUp.Pages(Day).Count, await WarmUp.PagesAsync(served.Client.BaseAddress!, Day, TestContext.Current.CancellationToken));
        Assert.Equal(before, await AllAsync(served));
        Assert.False(File.Exists(kept));

        // One that cannot be opened is left for whoever opens it.
        Assert.Equal(0, await WarmUp.PagesAsync(new("http://127.0.0.1:1"), Day, TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Colours_are_charted_patch_by_patch_or_the_chart_says_that_they_lie_together()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        foreach ((string patch, double l) in new[] { ("grey", 0.5), ("cyan", -3.5), ("grey", 0.7), ("cyan", -3.1) })
            (await served.Client.PostAsJsonAsync("/api/log", new { kind = "colour", runId = SampleLog.Run, at = "2026-11-26T09:00:00Z", colour = new { patch, deltaE = 1, deltaL = l } })).EnsureSuccessStatusCode();
        JsonElement all = (await served.Client.GetFromJsonAsync<JsonElement>("/api/log/charts/Lightness")).GetProperty("result");
        Assert.Contains("2 patches lie in one chart", all.GetProperty("note").GetString(), StringComparison.Ordinal);
        JsonElement grey = (await served.Client.GetFromJsonAsync<JsonElement>("/api/log/charts/Lightness?patch=grey")).GetProperty("result");
        Assert.Equal((2, 0.6), (grey.GetProperty("readings").GetInt32(), Math.Round(grey.GetProperty("charts")[0].GetProperty("centre").GetDouble(), 9)));
        string page = await served.Client.GetStringAsync("/log/charts?of=Lightness&patch=cyan");
        Assert.Contains("ΔL* of cyan", WebUtility.HtmlDecode(page), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_form_from_elsewhere_is_not_taken()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        using FormUrlEncodedContent form = new([new("by", "Ada")]);
        Assert.Equal(HttpStatusCode.BadRequest, (await served.Client.PostAsync("/runs/R-20261126-01/log/start", form)).StatusCode);
    }

    [Fact]
    public async Task The_end_of_a_run_takes_what_it_used_and_its_page_and_the_stock_room_say_so()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        Laydown.Plan.Runs.Run run = (await served.Shop.Services.Store.RunAsync("R-20261126-01", CancellationToken.None))!.Run;
        await served.Client.PostAsJsonAsync("/api/stock/receive", new { stockId = run.StockId, quantity = run.SheetCount + 1, place = "rack 1" });
        await PostAsync(served, new { at = "2026-11-26T09:00:00Z", kind = "start", runId = run.Id, pressId = run.PressId });
        await PostAsync(served, new { at = "2026-11-26T09:40:00Z", kind = "stop", runId = run.Id, pressId = run.PressId, by = "Ada", stop = new { good = run.SheetCount, spoiled = 2, made = (int?)null, done = true } });
        string log = await served.Client.GetStringAsync($"/runs/{run.Id}/log"), stock = await served.Client.GetStringAsync("/stock");
        Assert.Contains(Invariant($"{run.SheetCount + 2} used, {run.SheetCount + 1} taken from the stock room; 1 more than the room held: count its lots."), log, StringComparison.Ordinal);
        Assert.Contains(Invariant($"{run.SheetCount} good, 2 spoiled, {run.SheetCount} planned"), stock, StringComparison.Ordinal);

        // Another run told over this one is refused by name.
        using HttpResponseMessage over = await served.Client.PostAsJsonAsync("/api/log", new { at = "2026-11-26T09:20:00Z", kind = "start", runId = "R-20261126-03", pressId = run.PressId });
        Laydown.Plan.Runs.Run other = (await served.Shop.Services.Store.RunAsync("R-20261126-03", CancellationToken.None))!.Run;
        Assert.Equal(string.Equals(other.PressId, run.PressId, StringComparison.Ordinal) ? HttpStatusCode.BadRequest : HttpStatusCode.Created, over.StatusCode);
    }

    private static async Task PostAsync(ServedShop served, object entry)
    {
        using HttpResponseMessage answer = await served.Client.PostAsJsonAsync("/api/log", entry);
        Assert.True(answer.StatusCode == HttpStatusCode.Created, await answer.Content.ReadAsStringAsync());
    }

    [Theory]
    [InlineData("from", "soon"), InlineData("to", "2026-13-41"), InlineData("to", "26")]
    public async Task A_day_that_is_none_is_refused_by_name_and_a_last_day_is_contained(string field, string found)
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        foreach (string path in (string[])["/api/log", "/api/log/review", "/api/log/charts/Across"])
        {
            using HttpResponseMessage answer = await served.Client.GetAsync($"{path}?{field}={found}");
            Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
            JsonElement fault = (await answer.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("result").GetProperty("faults")[0];
            Assert.Equal((field, found), (fault.GetProperty("field").GetString(), fault.GetProperty("found").GetString()));
        }

        JsonElement all = (await served.Client.GetFromJsonAsync<JsonElement>("/api/log?rows=1")).GetProperty("result");
        string day = all.GetProperty("entries")[0].GetProperty("at").GetString()![..10];
        JsonElement ofDay = (await served.Client.GetFromJsonAsync<JsonElement>($"/api/log?rows=1&from={day}&to={day}")).GetProperty("result");
        Assert.True(ofDay.GetProperty("all").GetInt32() > 0);
    }

    [Theory, InlineData("/api/log"), InlineData("/api/log/review"), InlineData("/api/log/charts/Across")]
    public async Task A_time_that_ends_before_it_begins_is_refused_by_name(string path)
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        using HttpResponseMessage answer = await served.Client.GetAsync($"{path}?from=2026-11-20T08:00:00Z&to=2026-11-20T08:00:00Z");
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        JsonElement fault = (await answer.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("result").GetProperty("faults")[0];
        Assert.Equal("to", fault.GetProperty("field").GetString());
        Assert.Equal("after the start, 2026-11-20 08:00", fault.GetProperty("wanted").GetString());
    }

    [Fact]
    public async Task Charts_review_and_estimates_answer_with_what_was_logged()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        JsonElement charts = (await served.Client.GetFromJsonAsync<JsonElement>("/api/log/charts/Across")).GetProperty("result");
        Assert.Equal(2, charts.GetProperty("charts").GetArrayLength());
        Assert.Contains(charts.GetProperty("charts")[1].GetProperty("signals").EnumerateArray(), s => s.GetProperty("rule").GetString() == "beyondLimit");
        JsonElement review = (await served.Client.GetFromJsonAsync<JsonElement>("/api/log/review")).GetProperty("result");
        Assert.Equal("bands", review.GetProperty("causes")[0].GetProperty("cause").GetString());
        Assert.Equal(1, (await served.Client.GetFromJsonAsync<JsonElement>("/api/log/estimates")).GetProperty("result").GetProperty("runs").GetInt32());
        Assert.Equal(HttpStatusCode.BadRequest, (await served.Client.GetAsync("/api/orders/TW-1041/quote?breaks=x")).StatusCode);
    }

    private static async Task<int> AllAsync(ServedShop served) =>
        (await served.Client.GetFromJsonAsync<JsonElement>("/api/log")).GetProperty("result").GetProperty("all").GetInt32();

    private static async Task<string?> FieldAsync(ServedShop served, object entry)
    {
        HttpResponseMessage refused = await served.Client.PostAsJsonAsync("/api/log", entry);
        Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
        return (await refused.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("result").GetProperty("faults")[0].GetProperty("field").GetString();
    }
}
