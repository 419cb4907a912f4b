using System.Net;
using Laydown.Shop.Proof;
using Laydown.Web.Tests.Sample;

namespace Laydown.Web.Tests.Http;

/// <summary>What a proof link must not open, and what must not come in through it.</summary>
public sealed class ProofHttpRefusalTests
{
    [Fact]
    public async Task A_link_that_is_over_withdrawn_or_changed_shows_a_plain_page_and_nothing_of_the_shop()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        string open = served.Shop.OpenProof;
        (string Path, HttpStatusCode Status)[] links =
        [
            (await OverAsync(served), HttpStatusCode.Gone), (served.Shop.ClosedProof, HttpStatusCode.Gone), (open[..^1] + (open[^1] == 'A' ? 'B' : 'A'), HttpStatusCode.NotFound),
            ("/proof/none", HttpStatusCode.NotFound), ("/proof/" + new string('a', 5000), HttpStatusCode.NotFound), ("/proof/a.b", HttpStatusCode.NotFound),
        ];
        foreach ((string path, HttpStatusCode status) in links)
        {
            HttpResponseMessage answer = await served.Client.GetAsync(path);
            string body = await answer.Content.ReadAsStringAsync();
            Assert.Equal((path, status), (path, answer.StatusCode));
            Assert.Contains("ask whoever sent it", body, StringComparison.Ordinal);
            foreach (string secret in (string[])["TW-1042", "estuary", "Saltmarsh", "/orders", "/items", "L-1", "L-2", served.Shop.Folder])
                Assert.DoesNotContain(secret, body, StringComparison.Ordinal);
            Assert.True(answer.Headers.CacheControl!.NoStore, path);
        }
    }

    [Fact]
    public async Task Below_a_closed_link_there_is_nothing()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        string mark = Mark(served, "L-1");
        foreach (string below in (string[])[$"/tiles/{mark}/0/0-0", "/files/day.png"])
        {
            Assert.Equal(HttpStatusCode.Gone, (await served.Client.GetAsync(served.Shop.ClosedProof + below)).StatusCode);
            Assert.Equal(HttpStatusCode.NotFound, (await served.Client.GetAsync("/proof/none" + below)).StatusCode);
        }

        Assert.Equal(HttpStatusCode.Gone, (await PostAsync(served, served.Shop.ClosedProof, ("verdict", "approved"))).StatusCode);
    }

    [Fact]
    public async Task A_link_opens_the_tiles_and_pictures_of_its_own_look_only()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        HttpResponseMessage own = await served.Client.GetAsync(Invariant($"{served.Shop.OpenProof}/tiles/{Mark(served, "L-2")}/0/1-1"));
        Assert.Equal(HttpStatusCode.OK, own.StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await served.Client.GetAsync(served.Shop.OpenProof + "/files/night.png")).StatusCode);
        foreach (string below in (string[])
        [
            Invariant($"/tiles/{Mark(served, "L-1")}/0/1-1"), "/files/look.json", "/files/planes.raw", "/files/map-day.png", "/files/..%2FL-1%2Fday.png", "/point?x=1&y=1", "/api/looks",
            Invariant($"/tiles/{Mark(served, "L-2")}/9/0-0"), Invariant($"/tiles/{Mark(served, "L-2")}/0/-1-0"), Invariant($"/tiles/{Mark(served, "L-2")}/0/99-0"),
        ])
        {
            HttpResponseMessage answer = await served.Client.GetAsync(served.Shop.OpenProof + below);
            Assert.Equal((below, HttpStatusCode.NotFound), (below, answer.StatusCode));
            Assert.DoesNotContain("/orders", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task The_customers_page_names_no_other_item_no_price_no_ink_and_no_path()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        string body = await served.Client.GetStringAsync(served.Shop.OpenProof);
        Assert.Contains("A screen is not a print", body, StringComparison.Ordinal);
        foreach (string secret in (string[])["TW-10", "/items", "/orders", "/runs", "EUR", "Magenta", "Saltmarsh", "the visitor centre", served.Shop.Folder, "planes.raw", "eight-inks", "long-belt", "/api/", "blazor"])
            Assert.DoesNotContain(secret, body, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Markup_in_an_answer_stays_words_on_every_page()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        const string hostile = "</p><script>alert('x')</script><svg onload=alert(1)> {{7*7}} javascript:alert(1)";
        HttpResponseMessage sent = await PostAsync(served, served.Shop.OpenProof, ("verdict", "change"), ("text", hostile), ("from", "\"><img src=x onerror=alert(2)>"), ("x", "10"), ("y", "20"), ("view", "night"));
        Assert.Equal(HttpStatusCode.SeeOther, sent.StatusCode);
        foreach (string path in (string[])[served.Shop.OpenProof, "/items/TW-1042-1", "/looks/TW-1042-1/L-2"])
        {
            string body = await served.Client.GetStringAsync(path);
            Assert.Contains("{{7*7}} javascript:alert(1)", body, StringComparison.Ordinal);
            Assert.DoesNotContain("<script>alert", body, StringComparison.Ordinal);
            Assert.DoesNotContain("<svg onload", body, StringComparison.Ordinal);
            Assert.DoesNotContain("<img src=x", body, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("comment", "verdict", "change", "text", "")]
    [InlineData("verdict", "verdict", "perhaps", "text", "x")]
    [InlineData("verdict", "text", "x", "from", "y")]
    [InlineData("pin", "verdict", "change", "text", "x", "x", "-1", "y", "5", "view", "day")]
    [InlineData("pin", "verdict", "change", "text", "x", "x", "NaN", "y", "5", "view", "day")]
    [InlineData("pin", "verdict", "change", "text", "x", "x", "5", "y", "1e9", "view", "day")]
    [InlineData("pin", "verdict", "change", "text", "x", "x", "5", "y", "5", "view", "dusk")]
    public async Task What_cannot_be_an_answer_is_sent_back_with_its_field(string field, params string[] parts)
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        HttpResponseMessage sent = await PostAsync(served, served.Shop.OpenProof, [.. parts.Chunk(2).Select(p => (p[0], p[1]))]);
        Assert.EndsWith(Invariant($"?not={field}#answer"), sent.Headers.Location!.ToString(), StringComparison.Ordinal);
        Assert.Single((await served.Shop.Services.Proof.Answers.ShowAsync(SampleLooks.Item, CancellationToken.None)).All);
        Assert.Contains("role=\"alert\"", await served.Client.GetStringAsync(sent.Headers.Location), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_answer_too_large_or_not_a_form_or_from_another_site_is_refused()
    {
        await using ServedShop served = await ServedShop.OpenAsync();

        // A refused body is not read to its end: the shop closes that connection, so none is used twice.
        served.Client.DefaultRequestHeaders.ConnectionClose = true;
        Assert.Contains((await PostAsync(served, served.Shop.OpenProof, ("verdict", "change"), ("text", new string('x', 40_000)))).StatusCode, (HttpStatusCode[])[HttpStatusCode.BadRequest, HttpStatusCode.RequestEntityTooLarge]);
        using StringContent json = new("{}", System.Text.Encoding.UTF8, "application/json");
        Assert.Equal(HttpStatusCode.BadRequest, (await served.Client.PostAsync(served.Shop.OpenProof + "/answer", json)).StatusCode);
        using HttpRequestMessage elsewhere = new(HttpMethod.Post, served.Shop.OpenProof + "/answer") { Content = new FormUrlEncodedContent([new("verdict", "approved")]) };
        elsewhere.Headers.Add("Origin", "http://elsewhere.example");
        Assert.Equal(HttpStatusCode.Forbidden, (await served.Client.SendAsync(elsewhere)).StatusCode);
        Assert.Single((await served.Shop.Services.Proof.Answers.ShowAsync(SampleLooks.Item, CancellationToken.None)).All);
    }

    [Theory]
    [InlineData("/looks/TW-1042-1/L-2/link")]
    [InlineData("/looks/TW-1042-1/L-2/choose")]
    [InlineData("/looks/TW-1042-1/L-2/withdraw/none")]
    [InlineData("/looks/TW-1042-1/L-2/answers/none")]
    public async Task A_form_of_the_shop_without_its_token_is_refused(string path)
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        using FormUrlEncodedContent form = new([new("days", "5"), new("done", "yes")]);
        Assert.Equal(HttpStatusCode.BadRequest, (await served.Client.PostAsync(path, form)).StatusCode);
        Assert.Equal(2, (await served.Shop.Services.Proof.ListLinks.ListAsync(SampleLooks.Item, CancellationToken.None)).Count);
    }

    [Theory]
    [InlineData("/looks/TW-1042-1/L-9")]
    [InlineData("/looks/none")]
    [InlineData("/looks/..%2F..%2Fcatalogue/L-1/files/day.png")]
    [InlineData("/looks/TW-1042-1/L-2/files/look.json")]
    [InlineData("/looks/TW-1042-1/L-2/files/..%2FL-1%2Fday.png")]
    [InlineData("/looks/TW-1042-1/L-2/tiles/0000/0/0-0")]
    [InlineData("/api/looks/TW-1042-1/L-9")]
    [InlineData("/api/looks/TW-1042-1/L-2/point?x=99999&y=1")]
    [InlineData("/api/looks/TW-1042-1/L-2/point")]
    public async Task What_no_look_names_is_not_found(string path)
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        Assert.Equal(HttpStatusCode.NotFound, (await served.Client.GetAsync(path)).StatusCode);
    }

    private static string Mark(ServedShop served, string lookId) =>
        served.Shop.Services.Layers.ShowLook.Show(SampleLooks.Item, lookId).Then(l => served.Shop.Services.Proof.Tiles.Table(l.Record)).Value.Mark;

    // A link whose time ended an hour ago, signed by the shop's own key.
    private static async Task<string> OverAsync(ServedShop served)
    {
        DateTimeOffset now = served.Shop.Clock.GetUtcNow();
        ProofLink link = new("oldlink234", SampleLooks.Item, "L-2", "", now.AddDays(-2), DateTimeOffset.FromUnixTimeSeconds(now.AddHours(-1).ToUnixTimeSeconds()), null);
        await served.Shop.Proofs.SaveLinkAsync(link, CancellationToken.None);
        return "/proof/" + ProofToken.Write(await File.ReadAllBytesAsync(Path.Combine(served.Shop.Folder, "store", "proof.key")), link);
    }

    private static async Task<HttpResponseMessage> PostAsync(ServedShop served, string proof, params (string Name, string Value)[] fields)
    {
        using FormUrlEncodedContent form = new(fields.Select(f => new KeyValuePair<string, string>(f.Name, f.Value)));
        return await served.Client.PostAsync(proof + "/answer", form);
    }
}
