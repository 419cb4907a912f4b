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

    [Theory, InlineData(true), InlineData(false)]
    public async Task A_refused_form_gives_the_focus_to_the_list_of_faults_and_each_leads_to_its_field(bool scripts)
    {
        IPage page = await fixture.OpenAsync("/stock", scripts: scripts);
        ILocator receive = page.Locator("#receive");
        await receive.GetByLabel("How many, or m").FillAsync("1.5");
        await receive.GetByLabel("Place").FillAsync(" ");
        await receive.GetByLabel("Maker’s lot").FillAsync("M-77");
        await receive.GetByRole(AriaRole.Button, new() { Name = "Take in" }).ClickAsync();
        ILocator faults = page.Locator("#refused");
        await Assertions.Expect(faults).ToBeFocusedAsync();
        await Assertions.Expect(faults.GetByRole(AriaRole.Listitem)).ToHaveTextAsync(["How many, or m: Found 1.5; wanted whole boards or blanks.", "Place: Found nothing; wanted where it stands."]);
        ILocator quantity = receive.GetByLabel("How many, or m");
        await Assertions.Expect(quantity).ToHaveValueAsync("1.5");
        await Assertions.Expect(quantity).ToHaveAttributeAsync("aria-invalid", "true");
        await Assertions.Expect(quantity).ToHaveAccessibleDescriptionAsync("Found 1.5; wanted whole boards or blanks.");
        await Assertions.Expect(receive.GetByLabel("Maker’s lot")).ToHaveValueAsync("M-77");
        await faults.GetByRole(AriaRole.Link, new() { Name = "How many, or m" }).ClickAsync();
        await Assertions.Expect(quantity).ToBeFocusedAsync();
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Days_of_a_review_that_cannot_be_give_the_focus_to_the_list_of_faults()
    {
        IPage page = await fixture.OpenAsync("/log/review", scripts: false);
        await page.GetByLabel("From day").FillAsync("2026-11-20");
        await page.GetByLabel("To day").FillAsync("2026-11-10");
        await page.GetByRole(AriaRole.Button, new() { Name = "Show" }).ClickAsync();
        await Assertions.Expect(page.Locator("#refused")).ToBeFocusedAsync();
        await Assertions.Expect(page.GetByLabel("From day")).ToHaveValueAsync("2026-11-20");
        await Assertions.Expect(page.GetByLabel("To day")).ToHaveAccessibleDescriptionAsync("Found 2026-11-10; wanted 2026-11-20, the first day, or later.");
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_point_of_ordering_is_set_on_the_page_and_a_stock_below_it_stands_on_the_page_of_the_day()
    {
        Laydown.Press.Stocks.Stock stock = fixture.Shop.Services.Catalogue.Stocks.First(s => s is { OtherSizeOf: null, ReorderAt: null });
        IPage page = await fixture.OpenAsync("/stock", scripts: false);
        ILocator lines = page.Locator("#lines"), row = lines.Locator("tr", new() { HasText = stock.Name }).First;
        ILocator form = lines.Locator("form");
        await form.GetByLabel("Stock").SelectOptionAsync(stock.Id);
        await form.GetByLabel("Order at").FillAsync("100000");
        await form.GetByLabel("Up to").FillAsync("5");
        await form.GetByRole(AriaRole.Button, new() { Name = "Set the point" }).ClickAsync();
        await Assertions.Expect(page.Locator("#refused")).ToBeFocusedAsync();
        await Assertions.Expect(form.GetByLabel("Up to")).ToHaveAccessibleDescriptionAsync("Found 5; wanted over 100000, the point to order at, to 1000000.");
        await Assertions.Expect(form.GetByLabel("Order at")).ToHaveValueAsync("100000");
        await form.GetByLabel("Up to").FillAsync("100005");
        await form.GetByLabel("Who").FillAsync("Ada");
        await form.GetByRole(AriaRole.Button, new() { Name = "Set the point" }).ClickAsync();
        await Assertions.Expect(row).ToContainTextAsync("100000, up to 100005");
        await Assertions.Expect(row).ToContainTextAsync("set by Ada");
        await Assertions.Expect(row).ToContainTextAsync("low");
        IPage today = await fixture.OpenAsync("/", scripts: false);
        await Assertions.Expect(today.Locator("#low-stock")).ToContainTextAsync(stock.Name);
        await today.Context.CloseAsync();
        await page.Context.CloseAsync();
    }
}
