using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Web.Tests.Http;

public sealed class HttpLawTests
{
    private const string Run = "R-20261126-01";

    [Theory]
    [InlineData("/api/orders", "laydown/orders")]
    [InlineData("/api/items/TW-1041-1", "laydown/item")]
    [InlineData("/api/items/TW-1042-1/stack", "laydown/item-stack")]
    [InlineData("/api/runs", "laydown/runs")]
    [InlineData("/api/runs/R-20261126-01", "laydown/run")]
    [InlineData("/api/conditions", "laydown/conditions")]
    [InlineData("/api/conditions/long-belt-boards", "laydown/condition")]
    [InlineData("/api/conditions/long-belt-boards/figures", "laydown/condition-figures")]
    [InlineData("/api/named-colours", "laydown/named-colours")]
    [InlineData("/api/named-colours/on/long-belt-boards", "laydown/solved-colours")]
    [InlineData("/api/readings", "laydown/readings-list")]
    [InlineData("/api/items/TW-1041-1/shift", "laydown/item-shift")]
    public async Task Every_result_carries_schema_and_version(string path, string schema)
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        JsonElement answer = await served.Client.GetFromJsonAsync<JsonElement>(path);
        Assert.Equal(schema, answer.GetProperty("schema").GetString());
        Assert.Equal(1, answer.GetProperty("version").GetInt32());
    }

    [Fact]
    public async Task A_stack_that_is_not_there_is_missing_with_what_would_do()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        using HttpResponseMessage answer = await served.Client.GetAsync("/api/items/none/stack");
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        JsonElement told = await answer.Content.ReadFromJsonAsync<JsonElement>();
        Assert.Equal("laydown/faults", told.GetProperty("schema").GetString());
        Assert.Equal("item", told.GetProperty("result").GetProperty("faults")[0].GetProperty("field").GetString());
    }

    [Fact]
    public async Task No_result_tells_where_files_lie_on_this_machine()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        foreach (string path in (string[])["/api/orders", "/api/items/TW-1041-1", "/api/runs", "/items/TW-1041-1", "/items/TW-1045-1", "/api/items/TW-1041-1/shift", "/api/conditions/long-belt-boards"])
            Assert.DoesNotContain(served.Shop.Folder, await served.Client.GetStringAsync(path), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_set_up_that_must_not_be_released_is_told_before_any_number_to_set()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        RunRecord run = (await served.Shop.Store.RunAsync(Run, CancellationToken.None))!;
        RunRecord refused = run with { Run = run.Run with { SetUp = run.Run.SetUp with { Refusals = ["An edge stands too high."] } } };
        await served.Shop.Store.SaveRunsAsync([refused], ItemState.Planned, CancellationToken.None);
        foreach ((string path, string number) in (IEnumerable<(string, string)>)[("/runs/" + Run, "Head height to set"), ("/runs/" + Run + "/set-up", "Head height over the belt")])
        {
            string page = await served.Client.GetStringAsync(path);
            Assert.InRange(page.IndexOf("An edge stands too high.", StringComparison.Ordinal), 0, page.IndexOf(number, StringComparison.Ordinal));
        }
    }

    [Fact]
    public async Task A_run_is_made_over_http_and_told_as_events()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        using HttpResponseMessage asked = await served.Client.PostAsync("/api/runs/" + Run + "/make", null);
        Assert.Equal(HttpStatusCode.Accepted, asked.StatusCode);
        List<JsonElement> news = await NewsUntilEndAsync(served);
        double[] percents = [.. news.Select(n => n.GetProperty("donePercent").GetDouble())];
        Assert.Equal(percents.Order(), percents);
        Assert.Equal(100, percents[^1]);
        Assert.Equal("completed", news[^1].GetProperty("state").GetString());

        RunRecord run = (await served.Shop.Store.RunAsync(Run, CancellationToken.None))!;
        Assert.Equal(RunState.Completed, run.State);
        foreach (ManifestEntry file in run.Files)
        {
            byte[] bytes = await served.Client.GetByteArrayAsync("/runs/" + Run + "/files/" + file.Name);
            Assert.Equal(file.Sha256, Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(bytes)));
        }
    }

    [Fact]
    public async Task A_cancelled_run_leaves_nothing_and_can_be_made_again()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        served.Shop.Files.Hold();
        await served.Client.PostAsync("/api/runs/" + Run + "/make", null);
        while ((served.Shop.Services.Progress.Latest(Run)?.DonePercent ?? 0) < 40)
            await Task.Delay(10);
        JsonElement cancelled = await (await served.Client.PostAsync("/api/runs/" + Run + "/cancel", null)).Content.ReadFromJsonAsync<JsonElement>();
        Assert.True(cancelled.GetProperty("result").GetProperty("cancelled").GetBoolean());
        await NewsUntilEndAsync(served);
        Assert.Equal(RunState.Aborted, (await served.Shop.Store.RunAsync(Run, CancellationToken.None))!.State);
        Assert.Empty(Directory.GetDirectories(Path.Combine(served.Shop.Folder, "runs")));

        served.Shop.Files.Release();
        await served.Client.PostAsync("/api/runs/" + Run + "/make", null);
        await NewsUntilEndAsync(served);
        Assert.Equal(RunState.Completed, (await served.Shop.Store.RunAsync(Run, CancellationToken.None))!.State);
    }

    [Fact]
    public async Task Closing_waits_until_a_run_that_is_being_made_is_put_away()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        served.Shop.Files.Hold();
        Assert.True(await StartedAsync(served));
        while ((served.Shop.Services.Progress.Latest(Run)?.DonePercent ?? 0) < 40)
            await Task.Delay(10);
        await served.CloseAsync();

        // At once, not some time later: the store may be closed now.
        Assert.Equal(RunState.Aborted, (await served.Shop.Store.RunAsync(Run, CancellationToken.None))!.State);
        Assert.Empty(Directory.GetDirectories(Path.Combine(served.Shop.Folder, "runs")));
    }

    [Fact]
    public async Task A_run_that_is_being_made_is_not_started_twice()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        served.Shop.Files.Hold();
        Assert.True(await StartedAsync(served));
        Assert.False(await StartedAsync(served));
        served.Shop.Files.Release();
        await NewsUntilEndAsync(served);
    }

    [Fact]
    public async Task Papers_of_a_run_may_run_nothing()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        await served.Client.PostAsync("/api/runs/" + Run + "/make", null);
        await NewsUntilEndAsync(served);
        using HttpResponseMessage paper = await served.Client.GetAsync("/runs/" + Run + "/files/set-up.html");
        string policy = paper.Headers.GetValues("Content-Security-Policy").Single();
        Assert.Contains("sandbox", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("script-src", policy, StringComparison.Ordinal);
        using HttpResponseMessage plates = await served.Client.GetAsync("/runs/" + Run + "/files/sheet-01-layer-1-colour.tif");
        Assert.Equal("attachment", plates.Content.Headers.ContentDisposition!.DispositionType);
    }

    [Fact]
    public async Task A_quote_is_a_pdf_of_that_order()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        using HttpResponseMessage answer = await served.Client.GetAsync("/quotes/TW-1041");
        Assert.Equal("application/pdf", answer.Content.Headers.ContentType!.MediaType);
        Assert.Contains("%quote TW-1041", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Styles_scripts_and_fonts_come_from_inside_the_program()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        foreach ((string path, string type) in ((string, string)[])[
            ("/page/page.css", "text/css"), ("/page/tokens.css", "text/css"), ("/page/scheme.js", "text/javascript"), ("/page/making.js", "text/javascript"),
            ("/page/B612-Regular.otf", "font/otf"), ("/page/B612Mono-Bold.otf", "font/otf"), ("/page/mark.svg", "image/svg+xml"), ("/_framework/blazor.web.js", "text/javascript")])
        {
            using HttpResponseMessage answer = await served.Client.GetAsync(path);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            Assert.Equal(type, answer.Content.Headers.ContentType!.MediaType);
            Assert.True((await answer.Content.ReadAsByteArrayAsync()).Length > 100, path);
        }
    }

    [Fact]
    public async Task An_order_can_be_sent_file_by_file()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        byte[] artwork = new byte[3_000_000];
        new Random(7).NextBytes(artwork);
        using ByteArrayContent body = new(artwork);
        using HttpResponseMessage answer = await served.Client.PutAsync("/api/orders/TW-2000/reed.tif", body);
        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        Assert.Equal(artwork, await File.ReadAllBytesAsync(Path.Combine(served.Shop.Folder, "orders", "TW-2000", "reed.tif")));
    }

    private static async Task<bool> StartedAsync(ServedShop served)
    {
        using HttpResponseMessage answer = await served.Client.PostAsync("/api/runs/" + Run + "/make", null);
        return (await answer.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("result").GetProperty("started").GetBoolean();
    }

    /// <summary>Events of the run until it has left the desk.</summary>
    private static async Task<List<JsonElement>> NewsUntilEndAsync(ServedShop served)
    {
        List<JsonElement> news = [];
        using Stream stream = await served.Client.GetStreamAsync("/api/progress?run=" + Run);
        using StreamReader lines = new(stream);
        while (await lines.ReadLineAsync() is { } line)
        {
            if (!line.StartsWith("data: ", StringComparison.Ordinal))
                continue;
            JsonElement one = JsonSerializer.Deserialize<JsonElement>(line["data: ".Length..]);
            news.Add(one);
            if (!one.GetProperty("busy").GetBoolean())
                break;
        }

        return news;
    }
}
