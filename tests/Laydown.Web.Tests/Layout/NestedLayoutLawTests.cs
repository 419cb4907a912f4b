using System.Globalization;
using System.Text.RegularExpressions;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;
using Laydown.Web.Tests.Browser;
using Microsoft.Playwright;

namespace Laydown.Web.Tests.Layout;

/// <summary>Runs of contours on the layout page: drawn, judged, finished and saved by their contours; released, they stay.</summary>
public sealed class NestedLayoutLawTests(PageFixture fixture) : IClassFixture<PageFixture>
{
    private const string Run = "R-20261126-01";

    [Fact]
    public async Task Hooks_lie_in_each_other_are_judged_by_their_contours_saved_with_them_released_and_taken_back()
    {
        await NestAsync();
        IPage page = await fixture.OpenAsync("/runs/" + Run + "/layout");
        await page.Locator("[data-hand-layout][data-live=true]").WaitForAsync(new() { Timeout = 60_000 });
        await Assertions.Expect(page.Locator("[data-figure=conflicts]")).ToHaveTextAsync("0");
        Assert.Equal(0, await page.Locator("[data-bench] .hl-piece rect.hl-edge").CountAsync());
        await page.Locator("[data-bench]").FocusAsync();
        await HandLayoutLawTests.PressAsync(page, "n", "on board 1");
        double x = double.Parse(await page.GetByLabel("From left, mm").InputValueAsync(), CultureInfo.InvariantCulture);

        // The drawing lies: to the right is up the board. Five millimetres are the gap: one less is told with what is there, and keeps from saving.
        await HandLayoutLawTests.PressAsync(page, "ArrowRight", "is 4 mm from .*; wanted at least 5 mm");
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Save layout" })).ToBeDisabledAsync();
        await HandLayoutLawTests.PressAsync(page, "ArrowLeft", "No conflict");
        await HandLayoutLawTests.PressAsync(page, "l", "is locked");
        await page.GetByRole(AriaRole.Button, new() { Name = "Finish around what is locked" }).ClickAsync();
        await Assertions.Expect(page.Locator("[data-search]")).ToHaveTextAsync(new Regex("Layout \\d+ after"));
        await page.GetByRole(AriaRole.Button, new() { Name = "Take this layout" }).ClickAsync();
        await Assertions.Expect(HandLayoutLawTests.Told(page)).ToHaveTextAsync(new Regex("^Taken: .* No conflict.$"));
        await page.GetByRole(AriaRole.Button, new() { Name = "Save layout" }).ClickAsync();
        await Assertions.Expect(HandLayoutLawTests.Told(page)).ToHaveTextAsync(new Regex("^Saved."));
        RunRecord saved = (await fixture.Shop.Store.RunAsync(Run, CancellationToken.None))!;
        Assert.All(saved.Run.Sheets, s => Assert.Equal(s.Placements.Select(p => p.PieceId).Distinct().Order(), s.Outlines!.Select(o => o.PieceId).Order()));
        Assert.Equal(x, Assert.Single(saved.Run.Sheets.SelectMany(s => s.Placements), p => p.Locked).Place.XMm);

        await page.GetByLabel("Released or taken back by").FillAsync("Ines Alder");
        await page.GetByRole(AriaRole.Button, new() { Name = "Release this layout" }).ClickAsync();
        await Assertions.Expect(HandLayoutLawTests.Told(page)).ToHaveTextAsync(new Regex("^Released by Ines Alder: layout [0-9A-F]{4}-[0-9A-F]{4} "));
        await page.Locator("[data-bench]").FocusAsync();
        await HandLayoutLawTests.PressAsync(page, "n", "on board 1");
        await HandLayoutLawTests.PressAsync(page, "r", "^Nothing was changed. Ines Alder released this layout");
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Finish around what is locked" })).ToBeDisabledAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Take the release back" }).ClickAsync();
        await Assertions.Expect(HandLayoutLawTests.Told(page)).ToHaveTextAsync(new Regex("^Taken back by Ines Alder"));
        await page.Locator("[data-bench]").FocusAsync();
        await HandLayoutLawTests.PressAsync(page, "n", "on board 1");
        await HandLayoutLawTests.PressAsync(page, "l", "is no longer locked");
        await page.Context.CloseAsync();
    }

    // The run's pieces become hooks, two of them within each other's rectangles, the others apart.
    private async Task NestAsync()
    {
        RunRecord run = (await fixture.Shop.Store.RunAsync(Run, CancellationToken.None))!;
        SheetLayout first = run.Run.Sheets[0];
        string[] ids = [.. run.Run.Sheets.SelectMany(s => s.Placements).Select(p => p.PieceId).Distinct(StringComparer.Ordinal)];
        PieceOutline[] hooks = [.. ids.Select(id => Hook(id, run.Run.Sheets.SelectMany(s => s.Placements).First(p => p.PieceId == id && p.QuarterTurns == 0).Place.Size))];
        Placement one = first.Placements.First(p => p.QuarterTurns == 0);
        Placement other = first.Placements.First(p => p != one && p.PieceId == one.PieceId && p.QuarterTurns == 0);
        SheetLayout alone = first with { Placements = [.. first.Placements.Where(p => p != other)], Outlines = hooks, Repeats = 1, Offcuts = [] };
        Placement pair = one with { Place = one.Place with { XMm = 20, YMm = 20 } };
        SheetLayout nested = first with
        {
            Placements = [pair, other with { Place = pair.Place with { XMm = 85, YMm = 85 } }],
            Outlines = hooks,
            Repeats = 1,
            Offcuts = [],
        };
        SheetLayout[] sheets = [nested, alone with { Placements = [.. alone.Placements.Where(p => p != one)] }, .. run.Run.Sheets.Skip(1).Select(s => s with { Outlines = hooks })];
        await fixture.Shop.Store.SaveRunsAsync([run with { Run = run.Run with { Sheets = sheets } }], ItemState.Planned, CancellationToken.None);
    }

    private static PieceOutline Hook(string id, SizeMm size) => new(
        id, [new(0, 0), new(size.WidthMm, 0), new(size.WidthMm, 60), new(60, 60), new(60, size.HeightMm), new(0, size.HeightMm)], []);
}
