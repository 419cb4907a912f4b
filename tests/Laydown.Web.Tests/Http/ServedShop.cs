using Laydown.Shop.Colour;
using Laydown.Web.Tests.Sample;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;

namespace Laydown.Web.Tests.Http;

/// <summary>The sample shop served on a free port, with a client that follows no redirects.</summary>
internal sealed class ServedShop : IAsyncDisposable
{
    private readonly WebApplication app;

    private ServedShop(SampleShop shop, WebApplication app, string address)
    {
        Shop = shop;
        this.app = app;
        Client = new(new SocketsHttpHandler { AllowAutoRedirect = false }) { BaseAddress = new(address) };
    }

    public SampleShop Shop { get; }

    public HttpClient Client { get; }

    /// <summary>Returns once every request is answered or left; after it nothing is served.</summary>
    public Task StopAsync() => app.StopAsync();

    public static async Task<ServedShop> OpenAsync(IInkMeasure? pricing = null)
    {
        SampleShop shop = await SampleShop.OpenAsync(pricing);
        WebApplication app = WebShop.Build(shop.Services, "http://127.0.0.1:0");
        await app.StartAsync();
        return new(shop, app, app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First());
    }

    /// <summary>Ends serving; the shop itself stays open.</summary>
    public async Task CloseAsync()
    {
        Client.Dispose();
        await app.DisposeAsync();
    }

    public async ValueTask DisposeAsync()
    {
        await CloseAsync();
        Shop.Dispose();
    }
}
