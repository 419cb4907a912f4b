using Laydown.Shop;
using Laydown.Web.Forms;
using Laydown.Web.Frame;
using Laydown.Web.Http;
using Laydown.Web.Layers;
using Laydown.Web.Layout;
using Laydown.Web.Press;
using Laydown.Web.Log;
using Laydown.Web.Proof;
using Laydown.Web.Run;
using Laydown.Web.Week;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.HostFiltering;

namespace Laydown.Web;

/// <summary>Serves a shop as web pages and as an HTTP interface, on this machine only.</summary>
public static class WebShop
{
    private static readonly string[] OwnHosts = ["localhost", "127.0.0.1", "[::1]"];

    /// <summary>Serves until cancelled.</summary>
    /// <param name="services">The open shop.</param>
    /// <param name="url">Address to listen at, such as <c>http://127.0.0.1:5080</c>; it must name this machine itself.</param>
    /// <param name="open">Told the address once the shop can be asked there; a port 0 is the free one that was taken.</param>
    /// <param name="cancellation">Ends serving; runs being made are cancelled and leave nothing.</param>
    /// <exception cref="ArgumentException">The address is no http address of this machine.</exception>
    /// <exception cref="IOException">The port is taken.</exception>
    public static async Task ServeAsync(ShopServices services, string url, Action<string> open, CancellationToken cancellation)
    {
        Task reading = Task.Run(() => WarmUp.StoreAsync(services, cancellation), cancellation);
        await using WebApplication app = Build(services, url);
        await reading;
        await app.StartAsync(cancellation);
        open(app.Urls.First());
        Task<int> opening = WarmUp.PagesAsync(new Uri(app.Urls.First()), DateOnly.FromDateTime(services.Clock.GetLocalNow().Date), cancellation);
        await app.WaitForShutdownAsync(cancellation);
        await opening;
    }

    /// <summary>The application, not yet started.</summary>
    /// <param name="services">The open shop.</param>
    /// <param name="url">Address to listen at; port 0 takes a free one.</param>
    /// <exception cref="ArgumentException">The address is no http address of this machine.</exception>
    public static WebApplication Build(ShopServices services, string url)
    {
        ArgumentNullException.ThrowIfNull(services);
        WebApplicationBuilder builder = WebApplication.CreateBuilder(new WebApplicationOptions
        {
            ApplicationName = typeof(WebShop).Assembly.GetName().Name,
            ContentRootPath = AppContext.BaseDirectory,
            EnvironmentName = Environments.Production,
        });
        builder.WebHost.UseUrls(OwnAddress(url));
        builder.Logging.SetMinimumLevel(LogLevel.Warning);
        builder.Logging.AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Error);
        builder.Logging.AddFilter("Microsoft.AspNetCore.Antiforgery", LogLevel.Error);

        // A port that is taken is told by the caller, in words.
        builder.Logging.AddFilter("Microsoft.Extensions.Hosting.Internal.Host", LogLevel.Critical);
        AddParts(builder.Services, services);
        WebApplication app = builder.Build();
        Compose(app);
        return app;
    }

    private static void AddParts(IServiceCollection parts, ShopServices services)
    {
        parts.AddSingleton(services);
        parts.AddSingleton(services.Clock);
        parts.AddSingleton<MakingDesk>();
        parts.AddSingleton<RefusedWishes<Laydown.Plan.Runs.MeasuredSheet>>();
        parts.AddSingleton<RefusedWishes<Laydown.Plan.Runs.ModeOverrule>>();
        parts.AddSingleton<RefusedWishes<Laydown.Shop.Run.FirstPieceApproval>>();
        parts.AddSingleton<RefusedForms>();
        parts.AddSingleton<SolveDesk>();
        parts.AddSingleton<PassesDesk>();
        parts.AddSingleton<LayoutDesk>();
        parts.ConfigureHttpJsonOptions(o =>
        {
            foreach (System.Text.Json.Serialization.JsonConverter converter in ShopJson.Compact.Converters)
                o.SerializerOptions.Converters.Add(converter);
        });
        parts.AddRazorComponents().AddInteractiveServerComponents();
        parts.AddAntiforgery(o => o.Cookie.SameSite = SameSiteMode.Strict);

        // Keys live as long as the program: nothing is written outside the shop's folder.
        parts.AddDataProtection().UseEphemeralDataProtectionProvider();

        // A page from elsewhere that has its own name resolved to this machine is not answered.
        parts.Configure<HostFilteringOptions>(o => o.AllowedHosts = [.. OwnHosts]);
    }

    private static void Compose(WebApplication app)
    {
        app.UseHostFiltering();
        app.UseMiddleware<SafeHeaders>();
        app.UseStatusCodePagesWithReExecute("/not-found");
        app.UseAntiforgery();
        PageFiles.Map(app);
        ShopFiles.Map(app);
        MakingForms.Map(app);
        ShopInterface.Map(app);
        PassesInterface.Map(app);
        LookInterface.Map(app);
        SheetInterface.Map(app);
        SolveInterface.Map(app);
        LayersInterface.Map(app);
        LayoutInterface.Map(app);
        LayoutReleaseInterface.Map(app);
        CareInterface.Map(app);
        RunInterface.Map(app);
        WeekInterface.Map(app);
        CareForms.Map(app);
        StockForms.Map(app);
        WeekForms.Map(app);
        ProofInterface.Map(app);
        ProofForms.Map(app);
        LogInterface.Map(app);
        LogForms.Map(app);
        OverheadForms.Map(app);
        app.MapRazorComponents<App>().AddInteractiveServerRenderMode(o => o.ContentSecurityFrameAncestorsPolicy = null);
    }

    private static string OwnAddress(string url) =>
        Uri.TryCreate(url, UriKind.Absolute, out Uri? address) && address.IsLoopback && address.Scheme == Uri.UriSchemeHttp
            ? url
            : throw new ArgumentException(Invariant($"Address: found '{url}'; wanted an http address of this machine, such as http://127.0.0.1:5080."), nameof(url));
}
