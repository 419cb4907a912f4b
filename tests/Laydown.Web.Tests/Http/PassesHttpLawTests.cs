using System.Net;
using System.Text.Json;
using Laydown.Web.Tests.Sample;

namespace Laydown.Web.Tests.Http;

/// <summary>Passes of runs over HTTP: figures, pictures, and what is not there.</summary>
public sealed class PassesHttpLawTests
{
    private const string Run = "R-20261126-01";

    [Fact]
    public async Task A_run_says_its_passes_its_bands_and_where_asked_every_scan()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        JsonElement plain = await JsonAsync(served, Invariant($"/api/runs/{Run}/passes")), whole = await JsonAsync(served, Invariant($"/api/runs/{Run}/passes?scans=true"));
        JsonElement view = plain.GetProperty("view");
        Assert.Equal(Run, view.GetProperty("runId").GetString());
        Assert.True(view.GetProperty("bands")[0].GetProperty("forecast").GetProperty("visibleDeltaL").GetDouble() > 0);
        Assert.Equal(JsonValueKind.Null, plain.GetProperty("scans").ValueKind);
        Assert.Equal(view.GetProperty("faces")[0].GetProperty("scans").GetInt32(), whole.GetProperty("scans")[0].GetArrayLength());
    }

    [Fact]
    public async Task The_page_shows_passes_and_forecast_and_its_pictures_come_as_png_or_not_at_all()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        string page = await served.Client.GetStringAsync("/runs/" + Run);
        foreach (string words in new[] { "Passes and bands", "Most seen of bands", "Walk of the head over", "bands.png?times=10", "passes/0.png" })
            Assert.Contains(words, page, StringComparison.Ordinal);
        foreach (string name in new[] { "bands.png", "bands.png?times=10", "passes/0.png" })
        {
            HttpResponseMessage answer = await served.Client.GetAsync(Invariant($"/runs/{Run}/{name}"));
            Assert.Equal((HttpStatusCode.OK, "image/png"), (answer.StatusCode, answer.Content.Headers.ContentType?.MediaType));
        }

        string[] none = [.. new[] { "bands.png?times=1000", "passes/99.png", "passes/0.png?dots=run.json" }.Select(n => Invariant($"/runs/{Run}/{n}"))];
        foreach (string path in (string[])[.. none, "/api/runs/none/passes", "/runs/none/bands.png", "/runs/none/passes/0.png"])
            Assert.Equal(HttpStatusCode.NotFound, (await served.Client.GetAsync(path)).StatusCode);
    }

    private static async Task<JsonElement> JsonAsync(ServedShop served, string path) =>
        JsonDocument.Parse(await served.Client.GetStringAsync(path)).RootElement.GetProperty("result");
}
