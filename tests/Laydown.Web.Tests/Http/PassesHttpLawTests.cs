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

    [Theory]
    [InlineData("bands.png", HttpStatusCode.OK)]
    [InlineData("bands.png?times=10", HttpStatusCode.OK)]
    [InlineData("bands.png?times=1000", HttpStatusCode.NotFound)]
    [InlineData("passes/0.png", HttpStatusCode.OK)]
    [InlineData("passes/99.png", HttpStatusCode.NotFound)]
    public async Task Pictures_come_as_png_or_not_at_all(string name, HttpStatusCode status)
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        HttpResponseMessage answer = await served.Client.GetAsync(Invariant($"/runs/{Run}/{name}"));
        Assert.Equal(status, answer.StatusCode);
        if (status == HttpStatusCode.OK)
            Assert.Equal("image/png", answer.Content.Headers.ContentType?.MediaType);
    }

    [Fact]
    public async Task A_run_that_is_none_has_no_passes_and_no_pictures()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        foreach (string path in new[] { "/api/runs/none/passes", "/runs/none/bands.png", "/runs/none/passes/0.png" })
            Assert.Equal(HttpStatusCode.NotFound, (await served.Client.GetAsync(path)).StatusCode);
    }

    [Fact]
    public async Task The_page_of_a_run_shows_passes_and_the_forecast()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        string page = await served.Client.GetStringAsync("/runs/" + Run);
        Assert.Contains("Passes and bands", page, StringComparison.Ordinal);
        Assert.Contains("Most seen of bands", page, StringComparison.Ordinal);
        Assert.Contains("Walk of the head over", page, StringComparison.Ordinal);
        Assert.Contains("bands.png?times=10", page, StringComparison.Ordinal);
    }

    private static async Task<JsonElement> JsonAsync(ServedShop served, string path) =>
        JsonDocument.Parse(await served.Client.GetStringAsync(path)).RootElement.GetProperty("result");
}
