using System.Net;
using Laydown.Shop.Layers;
using Laydown.Web.Http;

namespace Laydown.Web.Tests.Http;

/// <summary>What cannot be previewed or solved is said by its field, and a solve needs the page's own form.</summary>
public sealed class SolveHttpRefusalTests
{
    [Theory]
    [InlineData("weight=3")]
    [InlineData("weight=NaN")]
    [InlineData("strength=0")]
    [InlineData("strength=a%20lot")]
    [InlineData("ppi=100000")]
    [InlineData("night=9")]
    [InlineData("nx1=150")]
    [InlineData("exposure=7")]
    [InlineData("lift=99")]
    public async Task A_preview_of_what_cannot_be_is_refused(string query)
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        HttpResponseMessage answer = await served.Client.GetAsync("/api/looks/TW-1042-1/preview?" + query);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("wanted", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("none")]
    [InlineData("TW-1041-1")]
    public async Task An_item_that_is_no_panel_has_no_preview(string item)
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        Assert.Equal(HttpStatusCode.BadRequest, (await served.Client.GetAsync(Invariant($"/api/looks/{item}/preview"))).StatusCode);
    }

    [Theory]
    [InlineData("/looks/TW-1042-1/solve")]
    [InlineData("/looks/TW-1042-1/solve/cancel")]
    public async Task A_solve_without_the_pages_own_token_is_refused(string path)
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        using FormUrlEncodedContent form = new([new("weight", "0")]);
        Assert.Equal(HttpStatusCode.BadRequest, (await served.Client.PostAsync(path, form)).StatusCode);
        Assert.Contains("not started", await served.Client.GetStringAsync("/api/looks/TW-1042-1/solving"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_form_becomes_the_request_it_says()
    {
        Dictionary<string, string> form = new()
        {
            ["weight"] = "1",
            ["white"] = "stepped",
            ["contrast"] = "no",
            ["ppi"] = "150",
            ["night"] = "2",
            ["nightplacing"] = "crop",
            ["nx1"] = "10",
            ["ny1"] = "20",
            ["dx1"] = "30",
            ["dy1"] = "40",
        };
        PanelRequest request = SolveInterface.Request("X-1", name => form.GetValueOrDefault(name, "")).Value;
        Assert.Equal((10.0, WhiteChoice.Stepped, false, 150.0, PairPlacing.Crop), (request.Wish.NightWeight, request.Wish.White, request.Wish.KeepContrast, request.Ppi, request.Pair.NightPlacing));
        Assert.Equal([0.5, 0.75, 1], request.Wish.WhiteStrengths);
        Assert.Equal(new PairPoint(10, 20, 30, 40, PairUnit.Percent), Assert.Single(request.Pair.Points));
    }
}
