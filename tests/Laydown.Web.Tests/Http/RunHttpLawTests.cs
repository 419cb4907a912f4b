using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;
using Laydown.Web.Tests.Sample;

namespace Laydown.Web.Tests.Http;

/// <summary>What people decide about a run, over HTTP: judged as on the page and the command line.</summary>
public sealed class RunHttpLawTests
{
    private const string Id = "R-20261126-01";

    [Fact]
    public async Task A_run_is_let_go_its_first_piece_signed_off_and_anew_after_it_was_taken_back()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        RunRecord run = await MadeAsync(served);
        string mm = FormattableString.Invariant($"{served.Shop.Services.Catalogue.Stocks.First(s => s.Id == run.Run.StockId).ThicknessMm}");
        string sheet = "{\"thicknessMm\":[" + string.Join(',', Enumerable.Repeat(mm, run.Run.Belt.FrontLay == "none" ? 3 : 5)) + "],\"edgeLiftMm\":0.1,\"measuredBy\":\"Ada\",\"checkedBy\":\"BY\",\"checkedHighestMm\":" + mm + ",\"seen\":true}";
        string every = "{\"made\":[" + string.Join(',', run.Run.SetUp.FirstPieceChecks.Index().Select(c => c.Index + 1)) + "],\"by\":\"Cy\",\"notes\":\"gap is fine\"}";
        Assert.Equal("letGo", Field(await PostAsync(served, "first-piece", every, HttpStatusCode.BadRequest)));

        // What nobody measured is asked for, and never 0.
        Assert.Equal("/edgeLiftMm", Field(await PostAsync(served, "let-go", sheet.Replace("\"edgeLiftMm\":0.1,", "", StringComparison.Ordinal), HttpStatusCode.BadRequest)));
        Assert.Equal("/checkedHighestMm", Field(await PostAsync(served, "let-go", sheet.Replace("\"checkedHighestMm\":" + mm + ",", "", StringComparison.Ordinal), HttpStatusCode.BadRequest)));
        await PostAsync(served, "let-go", sheet.Replace("[" + mm, "null,\"none\":[" + mm, StringComparison.Ordinal), HttpStatusCode.BadRequest);
        Assert.Equal("checkedBy", Field(await PostAsync(served, "let-go", sheet.Replace("BY", "Ada", StringComparison.Ordinal), HttpStatusCode.BadRequest)));
        Assert.True((await PostAsync(served, "let-go", sheet.Replace("BY", "Bo", StringComparison.Ordinal), HttpStatusCode.OK)).GetProperty("result").GetProperty("release").GetProperty("headGap").GetProperty("mm").GetDouble() > 0);

        Assert.Equal("check 2", Field(await PostAsync(served, "first-piece", every.Replace(",2,", ",", StringComparison.Ordinal), HttpStatusCode.BadRequest)));
        Assert.Equal("by", Field(await PostAsync(served, "first-piece", every.Replace("Cy", " ", StringComparison.Ordinal), HttpStatusCode.BadRequest)));
        Assert.Null(await ApprovedAsync(served));
        await PostAsync(served, "first-piece", every, HttpStatusCode.OK);
        Assert.Contains("gap is fine", (await ApprovedAsync(served))!.Words, StringComparison.Ordinal);
        Assert.Contains("First piece approved", await served.Client.GetStringAsync("/api/log"), StringComparison.Ordinal);

        await PostAsync(served, "let-go/back", "", HttpStatusCode.OK);
        Assert.Null(await ApprovedAsync(served));
    }

    [Fact]
    public async Task Another_mode_is_taken_by_name_and_reason_and_why_a_run_is_held_is_told()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        RunRecord run = (await served.Shop.Store.RunAsync(Id, CancellationToken.None))!;
        string other = run.Run.Mode.RunnerUpId!;
        Assert.Equal("/reason", Field(await PostAsync(served, "mode", $$"""{"modeId":"{{other}}","by":"Ada","reason":7}""", HttpStatusCode.BadRequest)).Replace("$.", "/", StringComparison.Ordinal));
        Assert.NotEqual("", Field(await PostAsync(served, "mode", $$"""{"modeId":"{{other}}","by":"Ada","reason":" "}""", HttpStatusCode.BadRequest)));
        JsonElement taken = await PostAsync(served, "mode", $$"""{"modeId":"{{other}}","by":"Ada","reason":"as last year"}""", HttpStatusCode.OK);
        Assert.Equal(other, taken.GetProperty("result").GetProperty("run").GetProperty("run").GetProperty("mode").GetProperty("modeId").GetString());
        Assert.Equal(JsonValueKind.Array, (await served.Client.GetFromJsonAsync<JsonElement>("/api/runs/" + Id)).GetProperty("result").GetProperty("refusals").ValueKind);
        await PostAsync(served, "mode/as-proposed", "", HttpStatusCode.OK);
    }

    private static async Task<RunRecord> MadeAsync(ServedShop served)
    {
        served.Shop.Files.Release();
        RunRecord run = (await served.Shop.Services.MakeRun.MakeAsync(Id, CancellationToken.None)).Value;
        RunRecord clean = run with { Run = run.Run with { SetUp = run.Run.SetUp with { Refusals = [] } } };
        await served.Shop.Store.SaveRunsAsync([clean], ItemState.Completed, CancellationToken.None);
        return clean;
    }

    private static async Task<ApprovedPiece?> ApprovedAsync(ServedShop served) =>
        await served.Shop.Services.FirstPiece!.OfAsync((await served.Shop.Store.RunAsync(Id, CancellationToken.None))!, CancellationToken.None);

    private static string Field(JsonElement answer) => answer.GetProperty("result").GetProperty("faults")[0].GetProperty("field").GetString()!;

    private static async Task<JsonElement> PostAsync(ServedShop served, string what, string body, HttpStatusCode wanted)
    {
        using StringContent content = new(body, Encoding.UTF8, "application/json");
        using HttpResponseMessage answer = await served.Client.PostAsync($"/api/runs/{Id}/{what}", content);
        string text = await answer.Content.ReadAsStringAsync();
        Assert.True(wanted == answer.StatusCode, text);
        return JsonDocument.Parse(text).RootElement;
    }
}
