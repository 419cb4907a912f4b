using Microsoft.Playwright;

namespace Laydown.Web.Tests.Browser;

/// <summary>Overhead, quotes and stock room worked from their pages, with script and without.</summary>
public sealed class MoneyPagesLawTests(PageFixture fixture) : IClassFixture<PageFixture>
{
    [Theory, InlineData(true), InlineData(false)]
    public async Task Overhead_is_written_down_set_against_what_runs_carry_and_struck(bool scripts)
    {
        string what = scripts ? "rent with script" : "rent without";
        IPage page = await fixture.OpenAsync("/log/overhead?from=2026-11-01&to=2026-12-31&count=due", scripts: scripts);
        await page.GetByLabel("Amount without tax, EUR").FillAsync("1234.5");
        await page.GetByLabel("For what").FillAsync(what);
        await page.Locator("#add").GetByLabel("Who").FillAsync("Ada");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write it down" }).ClickAsync();
        ILocator spent = page.Locator("#spent");
        await Assertions.Expect(spent).ToContainTextAsync($"overhead: 1234.50 spent, {what}");
        await Assertions.Expect(page.Locator("#balance")).ToContainTextAsync("Under-applied by");
        await spent.GetByLabel("Entry that was wrong").SelectOptionAsync(new SelectOptionValue { Index = 0 });
        await spent.GetByLabel("Why").FillAsync("told twice");
        await spent.GetByLabel("Who").FillAsync("Bo");
        await spent.GetByRole(AriaRole.Button, new() { Name = "Strike it" }).ClickAsync();
        await Assertions.Expect(spent).ToContainTextAsync("Nothing is written down as spent");
        await Assertions.Expect(page.Locator("#balance")).ToContainTextAsync("cannot be judged yet");
        await page.Context.CloseAsync();
    }

    [Theory, InlineData(true), InlineData(false)]
    public async Task Quantities_and_ways_are_priced_on_the_quote(bool scripts)
    {
        IPage page = await fixture.OpenAsync("/orders/TW-1041/quote", scripts: scripts);
        await page.Locator("#quantities").GetByLabel("Quantities").FillAsync("1,ten");
        await page.GetByRole(AriaRole.Button, new() { Name = "Price them" }).ClickAsync();
        await Assertions.Expect(page.Locator("#quantities")).ToContainTextAsync("wanted whole numbers with commas between");
        ILocator quantities = page.Locator("#quantities").GetByLabel("Quantities");
        await Assertions.Expect(quantities).ToHaveValueAsync("1,ten");
        await quantities.FillAsync("1,7");
        await page.GetByRole(AriaRole.Button, new() { Name = "Price them" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Link, new() { Name = "Quote with these quantities as PDF" })).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("#quantities").GetByRole(AriaRole.Rowheader, new() { Name = "7", Exact = true }).First).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("#pricing")).ToHaveTextAsync("");
        await page.GetByRole(AriaRole.Button, new() { Name = "Compare" }).ClickAsync();
        await Assertions.Expect(page.Locator("#ways").GetByRole(AriaRole.Rowheader, new() { Name = "by itself" })).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("#pricing")).ToHaveTextAsync("");
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_run_keeps_back_gives_free_and_takes_by_name_and_is_taken_once()
    {
        Laydown.Plan.Runs.Run run = (await fixture.Shop.Services.Store.RunAsync("R-20261126-01", CancellationToken.None))!.Run;
        IPage page = await fixture.OpenAsync("/stock", scripts: false);
        ILocator runs = page.Locator("#runs");
        ILocator Do(string what) => runs.GetByRole(AriaRole.Button, new() { Name = what + " " + run.Id });

        // Without a lot nothing can be kept back, and the page says what to do.
        await Do("Keep back for").ClickAsync();
        await Assertions.Expect(page.GetByText("take goods in first")).ToBeVisibleAsync();
        foreach (string stock in Laydown.Plan.StockRoom.StockPicks.StockIds(run))
        {
            await page.Locator("#receive").GetByLabel("Stock").SelectOptionAsync(stock);
            await page.Locator("#receive").GetByLabel("How many, or m").FillAsync("500");
            await page.Locator("#receive").GetByLabel("Place").FillAsync("rack 1");
            await page.GetByRole(AriaRole.Button, new() { Name = "Take in" }).ClickAsync();
        }

        await Do("Keep back for").ClickAsync();
        await Do("Give free of").ClickAsync();
        await runs.GetByLabel("Who").FillAsync("Ada");
        await Do("Take for").ClickAsync();
        await Assertions.Expect(runs.Locator("tr", new() { HasText = run.Id })).ToContainTextAsync("taken");
        await Assertions.Expect(Do("Take for")).ToHaveCountAsync(0);
        await Assertions.Expect(page.Locator("#moves")).ToContainTextAsync("Ada");
        await page.Context.CloseAsync();
    }
}
