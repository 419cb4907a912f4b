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
        string start = await RefusedAsync(served, "start", ("at", "soon"), ("by", "Ada"));
        Assert.Contains("Found soon; wanted a time such as 2026-11-26T09:30.", start, StringComparison.Ordinal);
        Assert.Contains("value=\"Ada\"", start, StringComparison.Ordinal);
        string remake = await RefusedAsync(served, "remake", ("cause", ""), ("found", "Customer"), ("payer", "Shop"), ("pieces", "1"));
        Assert.Contains("Found nothing chosen; wanted one of the list.", remake, StringComparison.Ordinal);
        Assert.Contains("<option value=\"Customer\" selected", remake, StringComparison.Ordinal);
        Assert.Empty(await served.Shop.Services.Log!.Read.OfRunAsync("R-20261126-01", CancellationToken.None));
    }

    [Fact]
    public async Task What_was_typed_into_a_refused_form_stays_and_every_fault_stands_at_its_field()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        await SendAsync(served, "start", ("at", "2026-11-26T09:00Z"));
        string page = await RefusedAsync(served, "stop", ("good", "3"), ("spoiled", "-1"), ("made", "9"), ("ink", "a lot"), ("note", "edge <lifted>"), ("done", "yes"));
        Assert.Contains("Found a lot; wanted a number.", page, StringComparison.Ordinal);
        Assert.Contains("value=\"edge &lt;lifted&gt;\"", page, StringComparison.Ordinal);
        page = await RefusedAsync(served, "stop", ("good", "3"), ("spoiled", "-1"), ("made", "9"), ("note", "edge"), ("done", "yes"));
        foreach ((string id, string typed) in new[] { ("spoiled", "-1"), ("made", "9") })
            Assert.Matches($"<input id=\"{id}\" name=\"{id}\" value=\"{typed}\" aria-invalid=\"true\" aria-describedby=\"{id}-fault\"", page);
        Assert.Matches("<input id=\"good\" name=\"good\" value=\"3\" (?!aria-invalid)", page);

        // Only who typed it sees it.
        string other = await served.Client.GetStringAsync(Page);
        Assert.DoesNotContain("id=\"refused\"", other, StringComparison.Ordinal);
        Assert.Matches("<input id=\"spoiled\" name=\"spoiled\" value=\"0\"", other);
    }

    [Fact]
    public async Task A_refused_form_of_the_stock_room_keeps_what_was_typed()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        string page = await PageAsync(served, await SendAsync(served, "/stock", "/stock/receive", ("stock", "fluted-5"), ("quantity", "2.5"), ("place", "rack 7"), ("maker", "M-1"), ("by", "Ada")));
        Assert.Contains("Found 2.5; wanted whole boards or blanks.", page, StringComparison.Ordinal);
        foreach (string value in new[] { "2.5", "rack 7", "M-1", "Ada" })
            Assert.Contains($"value=\"{value}\"", page, StringComparison.Ordinal);
        Assert.Contains("<option value=\"fluted-5\" selected", page, StringComparison.Ordinal);

        // A width that is no number had been taken as the whole board's.
        page = await PageAsync(served, await SendAsync(served, "/stock", "/stock/receive", ("stock", "fluted-5"), ("quantity", "2"), ("place", "rack 7"), ("width", "half"), ("by", "Ada")));
        Assert.Contains("Found half; wanted a number.", page, StringComparison.Ordinal);
        Assert.Empty((await served.Shop.Services.Press.Stock.ShowAsync(CancellationToken.None)).Lots);
        Assert.Equal("/stock#lots", await SendAsync(served, "/stock", "/stock/receive", ("stock", "fluted-5"), ("quantity", "2"), ("place", "rack 7"), ("by", "Ada")));
        page = await PageAsync(served, await SendAsync(served, "/stock", "/stock/lot", ("lot", "L-0001"), ("kind", "consume"), ("quantity", "3"), ("why", "bent"), ("by", "Bo")));
        Assert.Contains("Found 3 of L-0001; wanted at most 2, which is there and not kept back for other runs.", page, StringComparison.Ordinal);
        Assert.Contains("value=\"bent\"", page, StringComparison.Ordinal);
        Assert.Contains("<option value=\"consume\" selected", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_refused_form_of_overhead_keeps_what_was_typed()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        string page = await PageAsync(served, await SendAsync(
            served, "/log/overhead", "/log/overhead/spent?count=done", ("kind", "overhead"), ("amount", "much"), ("what", "rent"), ("day", "31.11."), ("by", "Ada")));
        Assert.Contains("Found much; wanted a number.", page, StringComparison.Ordinal);
        Assert.Contains("Found 31.11.; wanted a day such as 2026-11-26.", page, StringComparison.Ordinal);
        Assert.Contains("value=\"rent\"", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/log", "2026-12-01", "2026-11-01", "Found 2026-11-01; wanted 2026-12-01, the first day, or later.")]
    [InlineData("/log/review", "2026-12-01", "2026-11-01", "Found 2026-11-01; wanted 2026-12-01, the first day, or later.")]
    [InlineData("/log/overhead", "2026-12-01", "2026-11-01", "Found 2026-11-01; wanted 2026-12-01, the first day, or later.")]
    [InlineData("/log/review", "2026-13-41", "", "Found 2026-13-41; wanted a day such as 2026-11-26 or a time such as 2026-11-26T09:30.")]
    [InlineData("/log/review", "2027-01-01", "", "Found 2027-01-01 00:00; wanted before now, 2026-11-26 ")]
    public async Task Days_that_cannot_be_are_refused_at_their_field_and_stay_there(string path, string from, string to, string words)
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        string page = await served.Client.GetStringAsync($"{path}?from={from}&to={to}");
        Assert.Contains(words, page, StringComparison.Ordinal);
        Assert.Matches($"<input id=\"from\" name=\"from\" value=\"{from}\"", page);
        Assert.Matches($"<input id=\"to\" name=\"to\" value=\"{to}\"", page);
        Assert.DoesNotContain("id=\"entries\"", page, StringComparison.Ordinal);
        Assert.DoesNotContain("id=\"figures\"", page, StringComparison.Ordinal);
        Assert.DoesNotContain("id=\"balance\"", page, StringComparison.Ordinal);
    }

    private static async Task<string> RefusedAsync(ServedShop served, string what, params (string Name, string Value)[] fields) =>
        await PageAsync(served, await SendAsync(served, what, fields));

    private static Task<string> PageAsync(ServedShop served, string location)
    {
        Assert.Contains("refused=", location, StringComparison.Ordinal);
        return served.Client.GetStringAsync(location);
    }

    private static Task<string> SendAsync(ServedShop served, string what, params (string Name, string Value)[] fields) => SendAsync(served, Page, Page + "/" + what, fields);

    private static async Task<string> SendAsync(ServedShop served, string page, string to, params (string Name, string Value)[] fields)
    {
        using HttpResponseMessage first = await served.Client.GetAsync(page);
        string token = Token().Match(await first.Content.ReadAsStringAsync()).Groups[1].Value;
        using HttpRequestMessage request = new(HttpMethod.Post, to)
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
