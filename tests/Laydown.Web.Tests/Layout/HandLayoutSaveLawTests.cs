using System.Text.RegularExpressions;
using Laydown.Layout.Sheets;
using Laydown.Shop.Run;
using Laydown.Web.Tests.Browser;
using Laydown.Web.Tests.Sample;
using Microsoft.Playwright;

namespace Laydown.Web.Tests.Layout;

/// <summary>From the page into the run: what was locked, finished, taken and saved is what the run then has.</summary>
public sealed class HandLayoutSaveLawTests(PageFixture fixture) : IClassFixture<PageFixture>
{
    [Fact]
    public async Task Locked_finished_taken_and_saved_the_run_has_it_and_its_old_press_files_are_gone()
    {
        RunRecord made = await MadeSheets.WriteAsync(fixture.Shop);
        IPage page = await fixture.OpenAsync("/runs/R-20261126-01/layout");
        await page.Locator("[data-hand-layout][data-live=true]").WaitForAsync(new() { Timeout = 60_000 });
        await page.Locator("[data-bench]").FocusAsync();
        await HandLayoutLawTests.PressAsync(page, "n", "on board 1");
        await HandLayoutLawTests.PressAsync(page, "r", "turned to");
        await page.GetByLabel("From left, mm").FillAsync("30");
        await page.GetByLabel("From below, mm").FillAsync("1200");
        await page.GetByRole(AriaRole.Button, new() { Name = "Lay it there" }).ClickAsync();
        await Assertions.Expect(HandLayoutLawTests.Told(page)).ToHaveTextAsync(new Regex("lies 30 mm from the left and 1200 mm from below"));
        await page.GetByRole(AriaRole.Button, new() { Name = "Locked", Exact = true }).ClickAsync();
        await Assertions.Expect(HandLayoutLawTests.Told(page)).ToHaveTextAsync(new Regex("is locked"));

        await page.GetByRole(AriaRole.Button, new() { Name = "Finish around what is locked" }).ClickAsync();
        await Assertions.Expect(page.Locator("[data-search]")).ToHaveTextAsync(new Regex("Layout \\d+ after .* boards?, .* % under pieces"));
        await page.GetByRole(AriaRole.Button, new() { Name = "Take this layout" }).ClickAsync();
        await Assertions.Expect(HandLayoutLawTests.Told(page)).ToHaveTextAsync(new Regex("^Taken: . boards. No conflict.$"));
        await page.GetByRole(AriaRole.Button, new() { Name = "Save layout" }).ClickAsync();
        await Assertions.Expect(HandLayoutLawTests.Told(page)).ToHaveTextAsync(new Regex("^Saved."));

        RunRecord saved = (await fixture.Shop.Store.RunAsync("R-20261126-01", CancellationToken.None))!;
        Placement locked = Assert.Single(saved.Run.Sheets.SelectMany(s => s.Placements), p => p.Locked);
        Assert.Equal((30.0, 1200.0), (locked.Place.XMm, locked.Place.YMm));
        Assert.Equal(made.Run.Items.Select(i => (i.ItemId, i.Pieces)).Order(), saved.Run.Items.Select(i => (i.ItemId, i.Pieces)).Order());
        Assert.Equal((RunState.Waiting, 0), (saved.State, saved.Files.Count));
        Assert.NotEqual(made.InputHash, saved.InputHash);
        Assert.False(Directory.Exists(Path.Combine(fixture.Shop.Folder, "runs", "R-20261126-01")));

        // The run's page says so, and makes them anew in the way of any run.
        await page.GetByRole(AriaRole.Link, new() { Name = "Make the press files" }).ClickAsync();
        await Assertions.Expect(page.Locator("#make")).ToContainTextAsync("The layout was changed by hand");
        await page.GetByRole(AriaRole.Button, new() { Name = "Make press files" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Link, new() { Name = "set-up.html" })).ToBeVisibleAsync();
        await page.Context.CloseAsync();
    }
}
