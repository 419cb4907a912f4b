using Laydown.Shop.Run;
using Laydown.Web.Tests.Sample;

namespace Laydown.Web.Tests.Http;

/// <summary>A served shop with one run whose first sheet has contone and dots, for tests that only look.</summary>
public sealed class MadeShop : IAsyncLifetime
{
    private ServedShop? served;

    internal ServedShop Served => served!;

    internal RunRecord Made { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        served = await ServedShop.OpenAsync();
        Made = await MadeSheets.WriteAsync(served.Shop, dots: true);
    }

    public async ValueTask DisposeAsync()
    {
        if (served is not null)
            await served.DisposeAsync();
    }
}
