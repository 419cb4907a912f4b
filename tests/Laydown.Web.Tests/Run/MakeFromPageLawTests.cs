using Laydown.Shop.Run;
using Laydown.Web.Run;
using Laydown.Web.Tests.Browser;
using Microsoft.Playwright;

namespace Laydown.Web.Tests.Run;

/// <summary>From the page to the files: a person presses a button, sees how far it is, and finds the files.</summary>
public sealed class MakeFromPageLawTests(PageFixture fixture) : IClassFixture<PageFixture>
{
    private const string Run = "R-20261126-01";

    [Fact]
    public async Task A_run_is_made_cancelled_and_made_again_from_its_page_with_live_progress()
    {
        fixture.Shop.Files.Hold();
        IPage page = await fixture.OpenAsync("/runs/" + Run);
        await page.GetByRole(AriaRole.Button, new() { Name = "Make press files" }).ClickAsync();

        // Held half-way by the stand-in: the page must show the step it stands at without being asked again.
        await Assertions.Expect(page.GetByRole(AriaRole.Progressbar)).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("#make [data-step]")).ToHaveTextAsync("wrote sheet-01-cut.svg");
        await Assertions.Expect(page.Locator("#make [data-percent]")).ToHaveTextAsync("42 %");
        await page.GetByRole(AriaRole.Button, new() { Name = "Cancel making" }).ClickAsync();
        await Assertions.Expect(page.Locator("#make")).ToContainTextAsync("Cancelled.");
        Assert.Equal(RunState.Aborted, (await fixture.Shop.Store.RunAsync(Run, CancellationToken.None))!.State);

        fixture.Shop.Files.Release();
        await page.GetByRole(AriaRole.Button, new() { Name = "Make press files" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Link, new() { Name = "sheet-01-layer-1-colour.tif" })).ToBeVisibleAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Img, new() { NameRegex = new("looks by room light") })).ToBeVisibleAsync();

        // The lamp switch shows the other look and hides the first.
        await page.GetByRole(AriaRole.Radio, new() { Name = "lamp on behind" }).CheckAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Img, new() { NameRegex = new("lamp on behind it") })).ToBeVisibleAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Img, new() { NameRegex = new("looks by room light") })).ToBeHiddenAsync();
        Assert.Equal(RunState.Completed, (await fixture.Shop.Store.RunAsync(Run, CancellationToken.None))!.State);
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Making_works_without_script()
    {
        fixture.Shop.Files.Release();
        IPage page = await fixture.OpenAsync("/runs/R-20261126-02", scripts: false);
        await page.GetByRole(AriaRole.Button, new() { Name = "Make press files" }).ClickAsync();
        await page.WaitForURLAsync("**/runs/R-20261126-02#make");
        await fixture.UntilMadeAsync("R-20261126-02");
        await page.ReloadAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Link, new() { Name = "set-up.html" })).ToBeVisibleAsync();
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Dots_are_asked_for_from_the_page_and_refused_by_name_where_nothing_makes_them()
    {
        fixture.Shop.Files.Release();
        IPage page = await fixture.OpenAsync("/runs/R-20261126-03");
        await page.GetByLabel("Tones become dots").SelectOptionAsync("intervals");
        await page.GetByLabel("Files are").SelectOptionAsync("deflate");
        await page.GetByRole(AriaRole.Button, new() { Name = "Make dots for the press" }).ClickAsync();

        // The run's other files come first; then the sample shop says what it has not.
        await Assertions.Expect(page.Locator("#make")).ToContainTextAsync("dots: found nothing here that makes them");
        Assert.Equal(RunState.Completed, (await fixture.Shop.Store.RunAsync("R-20261126-03", CancellationToken.None))!.State);
        await page.Context.CloseAsync();
    }

    [Fact]
    public void The_form_s_words_are_understood_and_no_others()
    {
        foreach (var packing in DotWords.Packings)
        {
            foreach (var screen in DotWords.Screens)
                Assert.Equal(new DotsWish(null, packing.Packing, true, screen.Kind), DotWords.Wish(packing.Word, screen.Word));
        }

        Assert.Null(DotWords.Wish("none", "dust"));
        Assert.Null(DotWords.Wish("", "arrays"));
    }
}
