using Laydown.Shop.Run;
using Laydown.Web.Tests.Browser;
using Microsoft.Playwright;

namespace Laydown.Web.Tests.Run;

/// <summary>Two people measure a sheet and let a run go from the set-up page; nothing is released half.</summary>
public sealed class ReleaseFromPageLawTests(PageFixture fixture) : IClassFixture<PageFixture>
{
    [Theory, InlineData(true), InlineData(false)]
    public async Task A_run_is_refused_with_what_was_typed_kept_then_released_and_taken_back(bool scripts)
    {
        fixture.Shop.Files.Release();
        RunRecord run = await MadeAsync(scripts ? "R-20261126-01" : "R-20261126-02");
        string id = run.Run.Id;
        double mm = fixture.Shop.Services.Catalogue.Stocks.First(s => s.Id == run.Run.StockId).ThicknessMm;
        IPage page = await fixture.OpenAsync($"/runs/{id}/set-up", scripts: scripts);
        ILocator part = page.Locator("#let-go");
        ILocator readings = part.Locator("[name=thickness]");
        for (int i = 0; i < await readings.CountAsync(); i++)
            await readings.Nth(i).FillAsync(FormattableString.Invariant($"{mm}"));
        await part.GetByLabel("Highest edge or corner, mm").FillAsync("0,2");
        await part.GetByLabel("Measured by").FillAsync("Ada");
        await part.GetByLabel("Highest thickness the second person found, mm").FillAsync(FormattableString.Invariant($"{mm}"));
        await part.GetByLabel("Checked by, a second person").FillAsync("Ada");
        if (run.Run.SetUp.ToBeSeen.Count > 0)
            await part.GetByRole(AriaRole.Checkbox).CheckAsync();
        await part.GetByRole(AriaRole.Button, new() { Name = "Let the run go to the press" }).ClickAsync();

        await Assertions.Expect(part).ToContainTextAsync("a second person");
        Assert.Equal("Ada", await part.GetByLabel("Measured by").InputValueAsync());
        Assert.Null((await fixture.Shop.Store.RunAsync(id, CancellationToken.None))!.LetGo);

        await part.GetByLabel("Checked by, a second person").FillAsync("Bo");
        await part.GetByRole(AriaRole.Button, new() { Name = "Let the run go to the press" }).ClickAsync();
        await Assertions.Expect(part).ToContainTextAsync("measured by Ada, checked by Bo");
        RunRecord released = (await fixture.Shop.Store.RunAsync(id, CancellationToken.None))!;
        Assert.True(released.LetGo!.HeadGap.Mm >= mm + 1.5);

        // What was measured stands in the log as well.
        Assert.Contains("Let go, checked by Bo", await (await page.APIRequest.GetAsync($"{fixture.Address}/api/log")).TextAsync(), StringComparison.Ordinal);

        await part.GetByRole(AriaRole.Button, new() { Name = "Take it back" }).ClickAsync();
        await Assertions.Expect(part.GetByRole(AriaRole.Button, new() { Name = "Let the run go to the press" })).ToBeVisibleAsync();
        Assert.Null((await fixture.Shop.Store.RunAsync(id, CancellationToken.None))!.LetGo);
        await page.Context.CloseAsync();
    }

    private async Task<RunRecord> MadeAsync(string id)
    {
        RunRecord run = (await fixture.Shop.Services.MakeRun.MakeAsync(id, CancellationToken.None)).Value;
        RunRecord clean = run with { Run = run.Run with { SetUp = run.Run.SetUp with { Refusals = [] } } };
        await fixture.Shop.Store.SaveRunsAsync([clean], Laydown.Shop.Orders.ItemState.Completed, CancellationToken.None);
        return clean;
    }
}
