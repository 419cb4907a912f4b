using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Laydown.Shop.Layers;
using Laydown.Web.Http;
using Laydown.Web.Tests.Sample;

namespace Laydown.Web.Tests.Http;

/// <summary>Looks made, chosen and solved over HTTP: the same answers as on the command line.</summary>
public sealed class LayersHttpLawTests
{
    [Fact]
    public async Task A_look_is_chosen_and_let_go_again()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        JsonElement unknown = await PostAsync(served, "/api/looks/TW-1042-1/L-9/choose", HttpStatusCode.BadRequest);
        Assert.Contains("no look L-9", unknown.GetProperty("result").GetProperty("faults")[0].GetProperty("found").GetString(), StringComparison.Ordinal);
        JsonElement none = await PostAsync(served, "/api/looks/TW-1042-1/none/choose", HttpStatusCode.OK);
        Assert.Equal(("laydown/item-look", JsonValueKind.Null), (none.GetProperty("schema").GetString(), none.GetProperty("result").GetProperty("lookId").ValueKind));
    }

    [Theory]
    [InlineData("/api/looks/none", "{}", HttpStatusCode.NotFound)]
    [InlineData("/api/looks/TW-1042-1", "{\"ppi\":5000}", HttpStatusCode.BadRequest)]
    [InlineData("/api/looks/TW-1042-1", "{\"white\":\"painted\"}", HttpStatusCode.BadRequest)]
    [InlineData("/api/looks/none/separate", "{}", HttpStatusCode.BadRequest)]
    [InlineData("/api/looks/TW-1042-1/separate?ppi=1", "{}", HttpStatusCode.BadRequest)]
    public async Task What_cannot_be_made_is_refused(string path, string body, HttpStatusCode wanted)
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        using StringContent content = new(body, System.Text.Encoding.UTF8, "application/json");
        Assert.Equal(wanted, (await served.Client.PostAsync(path, content)).StatusCode);
    }

    [Fact]
    public void A_body_becomes_the_request_it_says_and_what_it_leaves_out_is_usual()
    {
        SolveBody body = new(300, null, 0.5, WhiteChoice.Free, [0.4, 1], 12, null, false, 3000, PairPlacing.Crop, null, [new(1, 2, 3, 4, PairUnit.Mm)], "words");
        PanelRequest request = body.For("X-1");
        Assert.Equal(("X-1", 300, "words"), (request.ItemId, request.Ppi, request.Note));
        Assert.Equal((PairPlacing.Crop, PairPlacing.Careful, 1), (request.Pair.DayPlacing, request.Pair.NightPlacing, request.Pair.Points.Count));
        Assert.Equal((0.5, WhiteChoice.Free, 12.0, false, 3000.0), (request.Wish.NightWeight, request.Wish.White, request.Wish.LiftPercent ?? 0, request.Wish.KeepContrast, request.Wish.ViewingDistanceMm));
        PanelRequest usual = new SolveBody(null, null, null, null, null, null, null, null, null, null, null, null, null).For("X-1");
        PanelRequest wanted = PanelRequest.OfItem("X-1");
        Assert.Equal(JsonSerializer.Serialize(wanted), JsonSerializer.Serialize(usual));
    }

    private static async Task<JsonElement> PostAsync(ServedShop served, string path, HttpStatusCode wanted)
    {
        using HttpResponseMessage answer = await served.Client.PostAsync(path, null);
        Assert.Equal(wanted, answer.StatusCode);
        return await answer.Content.ReadFromJsonAsync<JsonElement>();
    }
}
