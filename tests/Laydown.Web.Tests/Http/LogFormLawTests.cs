using System.Net;
using System.Text.RegularExpressions;
using Laydown.Plan.Log;
using Laydown.Web.Tests.Sample;

namespace Laydown.Web.Tests.Http;

/// <summary>The forms at the press: what was forgotten is told later, and nothing is made up.</summary>
public sealed partial class LogFormLawTests
{
    private const string Page = "/runs/R-20261126-01/log";

    [Fact]
    public async Task A_start_and_a_stop_that_were_forgotten_are_told_with_their_own_time()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        Assert.Contains("?kept=", await SendAsync(served, "start", ("at", "2026-11-26T09:00Z")), StringComparison.Ordinal);
        Assert.Contains("?kept=", await SendAsync(served, "stop", ("good", "1"), ("spoiled", "0"), ("done", "yes"), ("ink", "30"), ("at", "2026-11-26T09:25Z")), StringComparison.Ordinal);
        LogEntry stop = (await served.Shop.Services.Log!.Read.OfRunAsync("R-20261126-01", CancellationToken.None)).Last(e => e.Kind == LogKind.Stop);
        Assert.Equal(25, stop.Actual!.Minutes, 9);
        Assert.Equal(30, stop.Actual.InkMl);
        string review = await served.Client.GetStringAsync("/log/review");
        string ink = review[review.IndexOf("id=\"ink\"", StringComparison.Ordinal)..];
        Assert.Matches(AnyLine(), ink);
    }

    [Fact]
    public async Task A_time_that_is_none_and_a_remake_without_a_cause_are_refused()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        Assert.Contains("?not=log%2C%20at%3A%20found%20soon", await SendAsync(served, "start", ("at", "soon")), StringComparison.Ordinal);
        Assert.Contains("?not=log%2C%20cause%3A%20found%20nothing%20chosen", await SendAsync(served, "remake", ("cause", ""), ("pieces", "1")), StringComparison.Ordinal);
        Assert.Empty(await served.Shop.Services.Log!.Read.OfRunAsync("R-20261126-01", CancellationToken.None));
    }

    private static async Task<string> SendAsync(ServedShop served, string what, params (string Name, string Value)[] fields)
    {
        using HttpResponseMessage first = await served.Client.GetAsync(Page);
        string token = Token().Match(await first.Content.ReadAsStringAsync()).Groups[1].Value;
        using HttpRequestMessage request = new(HttpMethod.Post, Page + "/" + what)
        {
            Content = new FormUrlEncodedContent(fields.Select(f => new KeyValuePair<string, string>(f.Name, f.Value)).Append(new("__RequestVerificationToken", token))),
        };
        if (first.Headers.TryGetValues("Set-Cookie", out IEnumerable<string>? cookies))
            request.Headers.Add("Cookie", string.Join("; ", cookies.Select(c => c.Split(';')[0])));
        using HttpResponseMessage answer = await served.Client.SendAsync(request);
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        return answer.Headers.Location!.ToString();
    }

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex Token();

    [GeneratedRegex("<th scope=\"row\"")]
    private static partial Regex AnyLine();
}
