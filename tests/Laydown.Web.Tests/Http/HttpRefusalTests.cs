using System.Net;
using Laydown.Measures;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;
using Laydown.Web.Tests.Sample;

namespace Laydown.Web.Tests.Http;

public sealed class HttpRefusalTests
{
    private const string Run = "R-20261126-01";

    [Theory]
    [InlineData("http://0.0.0.0:5080")]
    [InlineData("http://192.168.1.5:5080")]
    [InlineData("https://127.0.0.1:5080")]
    [InlineData("elsewhere")]
    public async Task An_address_that_is_not_this_machine_is_refused(string url)
    {
        using SampleShop shop = await SampleShop.OpenAsync();
        Assert.Throws<ArgumentException>(() => WebShop.Build(shop.Services, url));
    }

    [Fact]
    public async Task Every_answer_forbids_what_is_not_from_here()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        foreach (string path in (string[])["/", "/runs/" + Run, "/api/orders", "/page/page.css", "/nowhere"])
        {
            using HttpResponseMessage answer = await served.Client.GetAsync(path);
            string policy = string.Join("; ", answer.Headers.GetValues("Content-Security-Policy"));
            Assert.Contains("default-src 'none'", policy, StringComparison.Ordinal);
            Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
            Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
            Assert.Equal("same-origin", answer.Headers.GetValues("Referrer-Policy").Single());
        }
    }

    [Fact]
    public async Task Another_host_name_is_not_answered()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        using HttpRequestMessage request = new(HttpMethod.Get, "/");
        request.Headers.Host = "shop.example.org";
        Assert.Equal(HttpStatusCode.BadRequest, (await served.Client.SendAsync(request)).StatusCode);
    }

    [Theory]
    [InlineData("POST", "/api/runs/R-20261126-01/make")]
    [InlineData("POST", "/runs/R-20261126-01/make")]
    [InlineData("POST", "/runs/R-20261126-01/dots")]
    [InlineData("PUT", "/api/orders/X-1/a.pdf")]
    public async Task Another_site_cannot_make_the_shop_act(string method, string path)
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        using HttpRequestMessage request = new(new(method), path) { Content = new ByteArrayContent([1]) };
        request.Headers.Add("Origin", "http://elsewhere.example");
        Assert.Equal(HttpStatusCode.Forbidden, (await served.Client.SendAsync(request)).StatusCode);
        Assert.Equal(RunState.Waiting, (await served.Shop.Store.RunAsync(Run, CancellationToken.None))!.State);
    }

    [Fact]
    public async Task A_form_without_its_token_is_refused()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        using FormUrlEncodedContent form = new([]);
        foreach (string path in (string[])["/runs/" + Run + "/make", "/runs/" + Run + "/cancel", "/runs/" + Run + "/dots", "/day/plan"])
            Assert.Equal(HttpStatusCode.BadRequest, (await served.Client.PostAsync(path, form)).StatusCode);
        Assert.Equal(RunState.Waiting, (await served.Shop.Store.RunAsync(Run, CancellationToken.None))!.State);
    }

    [Theory]
    [InlineData("/runs/R-20261126-01/files/../../store/shop.db")]
    [InlineData("/runs/R-20261126-01/files/..%2F..%2Fcatalogue%2Fshop.json")]
    [InlineData("/runs/R-20261126-01/files/%2Fetc%2Fpasswd")]
    [InlineData("/runs/R-20261126-01/files/manifest.json")]
    [InlineData("/runs/..%2Fcatalogue/files/shop.json")]
    [InlineData("/page/..%2Fappsettings.json")]
    [InlineData("/items/TW-1041-1/pages/9.png")]
    [InlineData("/items/..%2F/pages/1.png")]
    [InlineData("/quotes/nobody")]
    [InlineData("/api/runs/none")]
    [InlineData("/api/items/none")]
    public async Task What_the_store_does_not_name_is_not_found(string path)
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        Assert.Equal(HttpStatusCode.NotFound, (await served.Client.GetAsync(path)).StatusCode);
    }

    [Fact]
    public async Task A_manifest_that_names_a_path_leads_nowhere()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        RunRecord run = (await served.Shop.Store.RunAsync(Run, CancellationToken.None))!;
        string inside = Path.Combine("..", "..", "catalogue", "shop.json");
        await served.Shop.Store.SaveRunsAsync(
            [run with { FolderName = Run, State = RunState.Completed, Files = [new(inside, "run", 1, "00")] }], ItemState.Completed, CancellationToken.None);
        Assert.Equal(HttpStatusCode.NotFound, (await served.Client.GetAsync("/runs/" + Run + "/files/" + Uri.EscapeDataString(inside))).StatusCode);
    }

    [Theory]
    [InlineData("/api/orders/X-1/..%2Fescape.pdf")]
    [InlineData("/api/orders/X-1/.hidden")]
    [InlineData("/api/orders/..%2F..%2Fx/a.pdf")]
    [InlineData("/api/orders/X.1/a.pdf")]
    [InlineData("/api/orders/X-1/a%00b.pdf")]
    public async Task A_name_that_could_lead_out_of_the_order_is_refused(string path)
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        using ByteArrayContent body = new([1, 2, 3]);
        HttpResponseMessage answer = await served.Client.PutAsync(path, body);
        Assert.Contains(answer.StatusCode, (HttpStatusCode[])[HttpStatusCode.BadRequest, HttpStatusCode.NotFound]);
        Assert.False(Directory.Exists(Path.Combine(served.Shop.Folder, "orders")));
    }

    [Fact]
    public async Task An_upload_that_is_cut_short_leaves_nothing()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        using System.Net.Sockets.TcpClient raw = new();
        await raw.ConnectAsync("127.0.0.1", served.Client.BaseAddress!.Port);
        byte[] head = System.Text.Encoding.ASCII.GetBytes(
            "PUT /api/orders/X-2/half.pdf HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Length: 100000\r\n\r\n" + new string('x', 4000));
        await raw.GetStream().WriteAsync(head);
        string folder = Path.Combine(served.Shop.Folder, "orders", "X-2");
        while (!Directory.Exists(folder) || Directory.GetFiles(folder).Length == 0)
            await Task.Delay(20);
        raw.Close();
        while (Directory.GetFiles(folder).Length > 0)
            await Task.Delay(20);
        Assert.False(File.Exists(Path.Combine(folder, "half.pdf")));
    }

    [Fact]
    public async Task A_file_that_came_is_never_changed()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        using ByteArrayContent first = new([1, 2, 3]);
        using ByteArrayContent second = new([4, 5]);
        Assert.Equal(HttpStatusCode.Created, (await served.Client.PutAsync("/api/orders/X-3/a.pdf", first)).StatusCode);
        Assert.Equal(HttpStatusCode.Conflict, (await served.Client.PutAsync("/api/orders/X-3/a.pdf", second)).StatusCode);
        Assert.Equal([1, 2, 3], await File.ReadAllBytesAsync(Path.Combine(served.Shop.Folder, "orders", "X-3", "a.pdf")));
    }

    [Fact]
    public async Task A_file_larger_than_the_disk_allows_is_refused_before_it_is_sent()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        using System.Net.Sockets.TcpClient raw = new();
        await raw.ConnectAsync("127.0.0.1", served.Client.BaseAddress!.Port);
        await raw.GetStream().WriteAsync(System.Text.Encoding.ASCII.GetBytes(
            "PUT /api/orders/X-4/huge.tif HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Length: 9000000000000\r\n\r\n"));
        byte[] answer = new byte[4096];
        int read = await raw.GetStream().ReadAsync(answer);
        Assert.StartsWith("HTTP/1.1 400", System.Text.Encoding.ASCII.GetString(answer, 0, read), StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(served.Shop.Folder, "orders", "X-4")));
    }
}
