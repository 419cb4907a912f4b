using Laydown.Shop;
using Laydown.Shop.Log;

namespace Laydown.Web;

/// <summary>Goes once through what pages need, so that the first page somebody opens is as quick as the later ones. It only reads.</summary>
/// <remarks>
/// A fresh process compiles what it runs: the first question to the store and the first page cost some 400 ms of processor time, the second ones some 2 ms. Questions
/// are asked beside the putting together of the application, before it takes connections; pages are opened once it does.
/// </remarks>
public static class WarmUp
{
    /// <summary>Pages that are opened once, in this order; they change nothing. The review of a whole year comes last: it reads the most.</summary>
    /// <param name="today">The day.</param>
    public static IReadOnlyList<string> Pages(DateOnly today) =>
        ["/log", "/log/charts?of=Across", "/api/log?rows=1", "/log/review", "/", "/runs", "/week?as=kept", Invariant($"/log/review?from={today.AddYears(-1):yyyy-MM-dd}&to={today:yyyy-MM-dd}")];

    /// <summary>Asks the store what the pages of the log ask.</summary>
    /// <param name="shop">The open shop.</param>
    /// <param name="cancellation">Ends the asking.</param>
    public static async Task StoreAsync(ShopServices shop, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(shop);
        if (shop.Log is not { } log)
            return;
        LogCursor? next = (await log.Read.PageAsync(new(Rows: 100), cancellation)).Next;
        await log.Read.PageAsync(new(After: next, Rows: 1), cancellation);
        await log.Charts.ShowAsync(ChartedFigure.Across, new(), null, cancellation);
    }

    /// <summary>Opens the pages; what cannot be opened is left for whoever opens it, who is told why.</summary>
    /// <param name="address">Where the shop is served.</param>
    /// <param name="today">The day.</param>
    /// <param name="cancellation">Ends the opening; no exception.</param>
    /// <returns>How many pages answered.</returns>
    public static async Task<int> PagesAsync(Uri address, DateOnly today, CancellationToken cancellation)
    {
        using HttpClient client = new() { BaseAddress = address };
        int answered = 0;
        try
        {
            foreach (string page in Pages(today))
            {
                using HttpResponseMessage answer = await client.GetAsync(new Uri(page, UriKind.Relative), cancellation);
                answered += answer.IsSuccessStatusCode ? 1 : 0;
            }
        }
        catch (Exception stop) when (stop is HttpRequestException or OperationCanceledException)
        {
            return answered;
        }

        return answered;
    }
}
