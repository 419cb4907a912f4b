using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using System.Text.RegularExpressions;
using Laydown.Shop.Proof;
using Laydown.Web.Tests.Sample;

namespace Laydown.Web.Tests.Http;

/// <summary>Looks over HTTP, and the forms of the shop about proofs.</summary>
public sealed partial class LookHttpLawTests
{
    [Fact]
    public async Task A_look_says_its_record_and_what_its_tiles_are_measured_in()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        JsonElement look = await JsonAsync(served, "/api/looks/TW-1042-1/L-2");
        Assert.Equal("laydown/look", look.GetProperty("schema").GetString());
        JsonElement table = look.GetProperty("result").GetProperty("table");
        Assert.Equal((950, 635, 3), (table.GetProperty("widthPx").GetInt32(), table.GetProperty("heightPx").GetInt32(), table.GetProperty("levels").GetInt32()));
        Assert.Equal(2, (await JsonAsync(served, "/api/looks/TW-1042-1")).GetProperty("result").GetProperty("looks").GetArrayLength());
    }

    [Fact]
    public async Task A_tile_comes_once_and_may_be_kept_for_good()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        JsonElement table = (await JsonAsync(served, "/api/looks/TW-1042-1/L-2")).GetProperty("result").GetProperty("table");
        HttpResponseMessage tile = await served.Client.GetAsync(Invariant($"/looks/TW-1042-1/L-2/tiles/{table.GetProperty("mark").GetString()}/2/0-0"));
        Assert.Equal(HttpStatusCode.OK, tile.StatusCode);
        Assert.Contains("immutable", tile.Headers.CacheControl!.ToString(), StringComparison.Ordinal);
        float[] light = TileCode.Read(await tile.Content.ReadAsByteArrayAsync(), 159, 238, table.GetProperty("roomMost").GetDouble(), table.GetProperty("lampMost").GetDouble());
        Assert.Contains(light, v => v > 0.1);
    }

    [Fact]
    public async Task A_point_says_inks_spectra_and_both_colours()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        JsonElement point = (await JsonAsync(served, "/api/looks/TW-1042-1/L-2/point?x=300&y=200")).GetProperty("result");
        Assert.Equal(36, point.GetProperty("reflectance").GetArrayLength());
        Assert.Equal(36, point.GetProperty("transmittance").GetArrayLength());
        Assert.Equal(3, point.GetProperty("layers").GetArrayLength());
        Assert.True(point.GetProperty("night").GetProperty("cdPerM2").GetDouble() > 0);
        Assert.True(point.GetProperty("day").GetProperty("deltaE00").GetDouble() >= 0);
    }

    [Fact]
    public async Task From_the_page_a_link_is_made_and_withdrawn_and_an_answer_dealt_with()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        await PressAsync(served, "/looks/TW-1042-1/L-1/link", ("days", "3"), ("for", "Grace"));
        SentLink made = (await served.Shop.Services.Proof.ListLinks.ListAsync(SampleLooks.Item, CancellationToken.None)).Single(l => l.Link.For == "Grace");
        Assert.Equal(HttpStatusCode.OK, (await served.Client.GetAsync(made.Path)).StatusCode);
        await PressAsync(served, Invariant($"/looks/TW-1042-1/L-1/withdraw/{made.Link.Id}"));
        Assert.Equal(HttpStatusCode.Gone, (await served.Client.GetAsync(made.Path)).StatusCode);

        ProofAnswer answer = (await served.Shop.Services.Proof.Answers.ShowAsync(SampleLooks.Item, CancellationToken.None)).All[0];
        await PressAsync(served, Invariant($"/looks/TW-1042-1/L-2/answers/{answer.Id}"), ("done", "yes"));
        Assert.True((await served.Shop.Services.Proof.Answers.ShowAsync(SampleLooks.Item, CancellationToken.None)).All[0].Done);
    }

    [Fact]
    public async Task An_approval_stands_on_the_item_and_on_the_table()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        using FormUrlEncodedContent form = new([new("verdict", "approved"), new("from", "Ada")]);
        HttpResponseMessage sent = await served.Client.PostAsync(served.Shop.OpenProof + "/answer", form);
        Assert.EndsWith("?said=yes#answer", sent.Headers.Location!.ToString(), StringComparison.Ordinal);
        foreach (string path in (string[])["/items/TW-1042-1", "/looks/TW-1042-1/L-2"])
            Assert.Contains("Look L-2 is approved", await served.Client.GetStringAsync(path), StringComparison.Ordinal);
        Assert.Contains("Look L-2 is approved", await served.Client.GetStringAsync("/looks/TW-1042-1/L-1"), StringComparison.Ordinal);
    }

    private static async Task<JsonElement> JsonAsync(ServedShop served, string path) => await served.Client.GetFromJsonAsync<JsonElement>(path);

    private static async Task PressAsync(ServedShop served, string action, params (string Name, string Value)[] fields)
    {
        using HttpResponseMessage first = await served.Client.GetAsync(action[..(action.IndexOf("/L-", StringComparison.Ordinal) + 4)]);
        string token = Token().Match(await first.Content.ReadAsStringAsync()).Groups[1].Value;
        using HttpRequestMessage request = new(HttpMethod.Post, action)
        {
            Content = new FormUrlEncodedContent(fields.Select(f => new KeyValuePair<string, string>(f.Name, f.Value)).Append(new("__RequestVerificationToken", token))),
        };
        if (first.Headers.TryGetValues("Set-Cookie", out IEnumerable<string>? cookies))
            request.Headers.Add("Cookie", string.Join("; ", cookies.Select(c => c.Split(';')[0])));
        Assert.Equal(HttpStatusCode.Redirect, (await served.Client.SendAsync(request)).StatusCode);
    }

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex Token();
}
