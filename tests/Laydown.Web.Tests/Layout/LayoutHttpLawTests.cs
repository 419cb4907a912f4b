using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using System.Text.Json.Nodes;
using Laydown.Shop.Run;
using Laydown.Web.Tests.Http;

namespace Laydown.Web.Tests.Layout;

public sealed class LayoutHttpLawTests
{
    private const string Address = "/api/runs/R-20261126-01/layout";

    [Fact]
    public async Task A_layout_is_read_changed_judged_and_saved_and_a_second_save_onto_the_old_one_is_refused()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        JsonNode layout = (await served.Client.GetFromJsonAsync<JsonNode>(Address))!["result"]!;
        Assert.Empty(layout["report"]!["conflicts"]!.AsArray());
        JsonNode sheets = layout["sheets"]!, mark = layout["mark"]!;
        JsonNode bare = (await Send(served, HttpMethod.Post, Address + "/edit", new { sheets, edit = new { verb = "addSheet", sheet = 0 } })).Body["result"]!["done"]!;
        object edit = new { verb = "pull", sheet = 0, spot = 0, to = (int)bare["sheet"]!, xMm = 500.5, yMm = 1000 };
        JsonNode edited = (await Send(served, HttpMethod.Post, Address + "/edit", new { sheets = bare["sheets"], edit })).Body["result"]!;
        Assert.Contains("500.5 mm from the left and 1000 mm from below. No conflict.", (string)edited["told"]!, StringComparison.Ordinal);
        Assert.Equal(4, edited["clearances"]!.AsArray().Count);

        (HttpStatusCode status, JsonNode saved) = await Send(served, HttpMethod.Put, Address, new { mark, sheets = edited["done"]!["sheets"] });
        Assert.Equal(HttpStatusCode.OK, status);
        Assert.NotEqual((string)mark!, (string)saved["result"]!["layout"]!["mark"]!);
        RunRecord run = (await served.Shop.Store.RunAsync("R-20261126-01", CancellationToken.None))!;
        Assert.Contains(run.Run.Sheets.SelectMany(s => s.Placements), p => p.Place is { XMm: 500.5, YMm: 1000 });
        (status, JsonNode refused) = await Send(served, HttpMethod.Put, Address, new { mark, sheets });
        Assert.Equal(HttpStatusCode.Conflict, status);
        Assert.Equal("mark", (string)refused["result"]!["faults"]![0]!["field"]!);
    }

    [Fact]
    public async Task A_search_tells_its_layouts_as_they_come_and_why_it_ended()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        JsonNode sheets = (await served.Client.GetFromJsonAsync<JsonNode>(Address))!["result"]!["sheets"]!;
        (HttpStatusCode status, JsonNode begun) = await Send(served, HttpMethod.Post, Address + "/finish", new { sheets, seconds = 20 });
        Assert.Equal(HttpStatusCode.Accepted, status);
        string feed = (string)begun["result"]!["address"]!;
        Task<string> read = served.Client.GetStringAsync(feed, CancellationToken.None);
        await Send(served, HttpMethod.Post, feed + "/stop", new { });
        string news = await read;
        Assert.Contains("event: ended", news, StringComparison.Ordinal);
        using JsonDocument last = JsonDocument.Parse(news.Split("data: ")[^1]);
        Assert.True(last.RootElement.GetProperty("found").GetProperty("report").GetProperty("canBeSaved").GetBoolean());
    }

    [Theory]
    [InlineData("POST", "/check", "{}", "/sheets")]
    [InlineData("POST", "/check", "[", "a layout as JSON")]
    [InlineData("POST", "/check", "{\"sheets\":[{\"repeats\":1,\"spots\":[{\"pieceId\":\"none\",\"xMm\":0,\"yMm\":0}]}]}", "/sheets/0/spots/0/pieceId")]
    [InlineData("POST", "/edit", "{\"sheets\":[]}", "/edit")]
    [InlineData("POST", "/edit", "{\"sheets\":[],\"edit\":{\"verb\":\"fly\",\"sheet\":0}}", "a layout as JSON")]
    [InlineData("POST", "/finish", "{\"sheets\":[],\"seconds\":-1}", "/seconds")]
    [InlineData("PUT", "", "{\"sheets\":[]}", "mark")]
    public async Task What_cannot_be_read_or_done_is_refused_by_its_field(string method, string path, string body, string words)
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        using HttpRequestMessage request = new(new(method), Address + path) { Content = new StringContent(body, System.Text.Encoding.UTF8, "application/json") };
        using HttpResponseMessage answer = await served.Client.SendAsync(request);
        Assert.InRange((int)answer.StatusCode, 400, 409);
        Assert.Contains(words, await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_layout_with_a_stop_and_a_run_being_made_are_not_saved_and_nothing_changes()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        JsonNode layout = (await served.Client.GetFromJsonAsync<JsonNode>(Address))!["result"]!;
        JsonNode sheets = layout["sheets"]!, mark = layout["mark"]!;
        string before = JsonSerializer.Serialize(await served.Shop.Store.RunAsync("R-20261126-01", CancellationToken.None));
        JsonNode wrong = sheets.DeepClone();
        wrong[0]!["spots"]!.AsArray().RemoveAt(0);
        (HttpStatusCode status, JsonNode refused) = await Send(served, HttpMethod.Put, Address, new { mark, sheets = wrong });
        Assert.Equal(HttpStatusCode.Conflict, status);
        Assert.Contains("have no place", (string)refused["result"]!["faults"]![0]!["found"]!, StringComparison.Ordinal);
        Assert.Equal(before, JsonSerializer.Serialize(await served.Shop.Store.RunAsync("R-20261126-01", CancellationToken.None)));

        served.Shop.Files.Hold();
        await served.Client.PostAsync("/api/runs/R-20261126-01/make", null);
        while ((await served.Shop.Store.RunAsync("R-20261126-01", CancellationToken.None))!.State != RunState.InProgress)
            await Task.Delay(20);
        (status, refused) = await Send(served, HttpMethod.Put, Address, new { mark, sheets });
        served.Shop.Files.Release();
        Assert.Equal(HttpStatusCode.Conflict, status);
        Assert.Contains("being made", (string)refused["result"]!["faults"]![0]!["found"]!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Blanks_and_runs_that_are_not_there_have_no_layout_by_hand()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        Assert.Equal(HttpStatusCode.NotFound, (await served.Client.GetAsync("/api/runs/none/layout")).StatusCode);
        Assert.Contains("pre-cut blanks", await (await served.Client.GetAsync("/api/runs/R-20261126-03/layout")).Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await served.Client.GetAsync("/api/layout-searches/none")).StatusCode);
    }

    private static async Task<(HttpStatusCode Status, JsonNode Body)> Send(ServedShop served, HttpMethod method, string address, object body)
    {
        using HttpRequestMessage request = new(method, address) { Content = JsonContent.Create(body) };
        using HttpResponseMessage answer = await served.Client.SendAsync(request);
        return (answer.StatusCode, (await answer.Content.ReadFromJsonAsync<JsonNode>())!);
    }
}
