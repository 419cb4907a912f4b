using Laydown.Web.Run;
using Laydown.Web.Tests.Sample;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;

namespace Laydown.Web.Tests.Browser;

/// <summary>The sample shop served on a free port of this machine, and a real Chromium that looks at it.</summary>
public sealed class PageFixture : IAsyncLifetime
{
    private IPlaywright? playwright;
    private WebApplication? app;
    private SampleShop? shop;

    public IBrowser Browser { get; private set; } = null!;

    public string Address { get; private set; } = "";

    internal SampleShop Shop => shop!;

    public async ValueTask InitializeAsync()
    {
        shop = await SampleShop.OpenAsync();
        app = WebShop.Build(shop.Services, "http://127.0.0.1:0");
        await app.StartAsync();
        Address = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First();
        playwright = await Playwright.CreateAsync();

        // A slow machine is no failure: only what never comes is.
        Assertions.SetDefaultExpectTimeout(60_000);
        Browser = await ChromiumOnPath.LaunchAsync(playwright);
    }

    public async ValueTask DisposeAsync()
    {
        if (Browser is not null)
            await Browser.CloseAsync();
        playwright?.Dispose();
        if (app is not null)
            await app.DisposeAsync();
        shop?.Dispose();
    }

    /// <summary>An address as it stands in the list of sample pages: links to proofs have another token in every shop.</summary>
    public string At(string path) => path switch { "/proof/open" => Shop.OpenProof, "/proof/closed" => Shop.ClosedProof, _ => path };

    /// <summary>Returns once a run is made or was refused, and the program holds it for done.</summary>
    public async Task UntilMadeAsync(string runId)
    {
        while (app!.Services.GetRequiredService<MakingDesk>().IsBusy(runId))
            await Task.Delay(20);
    }

    /// <summary>A page of its own at an address of the shop, once everything it asks for has come.</summary>
    public async Task<IPage> OpenAsync(string path, int width = 1440, int height = 900, ColorScheme scheme = ColorScheme.Light, bool scripts = true)
    {
        IBrowserContext context = await Browser.NewContextAsync(new()
        {
            BaseURL = Address,
            ViewportSize = new() { Width = width, Height = height },
            ColorScheme = scheme,
            JavaScriptEnabled = scripts,
        });
        IPage page = await context.NewPageAsync();
        IResponse? response = await page.GotoAsync(At(path), new() { WaitUntil = WaitUntilState.Load });
        Assert.True(response!.Status is 200 or 404 or 410, Invariant($"{path}: {response.Status}"));
        return page;
    }
}
