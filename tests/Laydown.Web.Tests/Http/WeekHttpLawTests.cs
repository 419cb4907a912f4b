using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Laydown.Web.Tests.Sample;

namespace Laydown.Web.Tests.Http;

/// <summary>The week over HTTP: read, changed by JSON alone, refused by name.</summary>
public sealed class WeekHttpLawTests
{
    [Fact]
    public async Task The_form_of_another_press_reaches_what_takes_it_and_one_from_elsewhere_is_not_taken()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        using FormUrlEncodedContent form = new([new("press", "short-belt")]);
        Assert.Contains("action=\"/week/press/R-20261126-01/take\"", await served.Client.GetStringAsync("/week/press/R-20261126-01"), StringComparison.Ordinal);
        Assert.Equal(System.Net.HttpStatusCode.BadRequest, (await served.Client.PostAsync("/week/press/R-20261126-01/take", form)).StatusCode);
    }

    [Fact]
    public async Task The_week_is_told_changed_and_refused_by_name()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        JsonElement week = (await served.Client.GetFromJsonAsync<JsonElement>("/api/week")).GetProperty("result");
        string run = week.GetProperty("runs")[0].GetProperty("runId").GetString()!;
        HttpResponseMessage none = await served.Client.PostAsJsonAsync("/api/week", new { kind = "put", runs = new[] { run } });
        Assert.Equal(HttpStatusCode.BadRequest, none.StatusCode);
        Assert.Contains("/at", await none.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.BadRequest, (await served.Client.PostAsJsonAsync("/api/week", new { kind = "burn", runs = new[] { run } })).StatusCode);
        Assert.Equal(HttpStatusCode.BadRequest, (await served.Client.PostAsJsonAsync("/api/week", new { kind = "let", runs = new[] { run } })).StatusCode);

        // What a change would make is told, and nothing is kept of it.
        string at = week.GetProperty("runs")[0].GetProperty("start").GetDateTimeOffset().AddHours(1).ToString("yyyy-MM-ddTHH:mm", System.Globalization.CultureInfo.InvariantCulture);
        JsonElement trial = (await (await served.Client.PostAsJsonAsync("/api/week/try", new { kind = "put", runs = new[] { run }, at })).Content.ReadFromJsonAsync<JsonElement>()).GetProperty("result");
        Assert.Equal(run, trial.GetProperty("runId").GetString());
        Assert.True(string.CompareOrdinal(trial.GetProperty("start").GetString()![..16], at) >= 0);
        Assert.DoesNotContain((await served.Client.GetFromJsonAsync<JsonElement>("/api/week")).GetProperty("result").GetProperty("runs").EnumerateArray(), r => r.GetProperty("pinned").GetBoolean());
        Assert.Equal(HttpStatusCode.BadRequest, (await served.Client.PostAsJsonAsync("/api/week/try", new { kind = "let", runs = new[] { run } })).StatusCode);

        // A form of another site can send text, but not JSON.
        using StringContent text = new("{\"kind\":\"let\",\"runs\":[\"R\"]}", System.Text.Encoding.UTF8, "text/plain");
        Assert.Contains("application/json", await (await served.Client.PostAsync("/api/week", text)).Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Contains(run, await served.Client.GetStringAsync("/week"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_run_put_by_hand_and_taken_back_stands_as_before()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        JsonElement first = await WeekAsync(served);
        foreach (JsonElement run in first.GetProperty("runs").EnumerateArray())
        {
            foreach (int minutes in (int[])[60, 75, 240])
            {
                // Opened anew before each: what is planned then is what must stand again.
                string before = Stands(await WeekAsync(served)), id = run.GetProperty("runId").GetString()!;
                string at = run.GetProperty("start").GetDateTimeOffset().AddMinutes(minutes).ToString("yyyy-MM-ddTHH:mm", System.Globalization.CultureInfo.InvariantCulture);
                if ((await served.Client.PostAsJsonAsync("/api/week", new { kind = "put", runs = new[] { id }, at })).StatusCode != HttpStatusCode.OK)
                    continue;
                JsonElement back = await (await served.Client.PostAsJsonAsync("/api/week", new { kind = "back" })).Content.ReadFromJsonAsync<JsonElement>();
                Assert.Equal(before, Stands(back.GetProperty("result")));
            }
        }
    }

    private static async Task<JsonElement> WeekAsync(ServedShop served) => (await served.Client.GetFromJsonAsync<JsonElement>("/api/week")).GetProperty("result");

    private static string Stands(JsonElement week) => string.Join('\n', week.GetProperty("runs").EnumerateArray().Select(r => r.GetProperty("runId").GetString() + " " + r.GetProperty("start").GetString()).Order(StringComparer.Ordinal));
}
