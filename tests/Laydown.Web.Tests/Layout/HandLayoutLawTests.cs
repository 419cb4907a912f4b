using System.Text.RegularExpressions;
using Laydown.Web.Tests.Browser;
using Microsoft.Playwright;

namespace Laydown.Web.Tests.Layout;

/// <summary>A layout under hands, in a real browser: by mouse, by finger, by keyboard; what is told is what happened.</summary>
public sealed class HandLayoutLawTests(PageFixture fixture) : IClassFixture<PageFixture>
{
    private const string Path = "/runs/R-20261126-01/layout";

    [Fact]
    public async Task A_piece_dragged_onto_the_bare_part_lies_there_and_undo_brings_it_back()
    {
        IPage page = await OpenAsync();
        ILocator last = page.Locator("[data-bench] [data-spot]").Last;
        string spot = (await last.GetAttributeAsync("data-spot"))!;
        LocatorBoundingBoxResult from = (await last.BoundingBoxAsync())!;
        await page.Mouse.MoveAsync(from.X + (from.Width / 2), from.Y + (from.Height / 2));
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(from.X + (from.Width / 2) + 20, from.Y + (from.Height / 2), new() { Steps = 4 });
        await page.Mouse.MoveAsync(from.X + (from.Width / 2) + 43, from.Y + (from.Height / 2), new() { Steps = 4 });
        await page.Mouse.UpAsync();

        // The drawing lies with its top to the right: to the right is up the board.
        await Assertions.Expect(Told(page)).ToHaveTextAsync(new Regex("^Trail sign, .*, copy .*, lies .* mm from the left and .* mm from below on board 1. No conflict.$"));
        string moved = await Y(page);
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Undo" })).ToBeEnabledAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Assertions.Expect(Told(page)).ToHaveTextAsync("Undone. No conflict.");
        LocatorBoundingBoxResult back = (await page.Locator($"[data-bench] [data-spot='{spot}']").BoundingBoxAsync())!;
        Assert.Equal(from.X, back.X, 1f);
        Assert.NotEqual(moved, await Y(page));
        await page.GetByRole(AriaRole.Button, new() { Name = "Redo" }).ClickAsync();
        await Assertions.Expect(Told(page)).ToHaveTextAsync("Done again. No conflict.");
        Assert.Equal(moved, await Y(page));
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task While_it_is_in_the_air_over_others_the_conflict_is_drawn()
    {
        IPage page = await OpenAsync();
        LocatorBoundingBoxResult from = (await page.Locator("[data-bench] [data-spot]").Last.BoundingBoxAsync())!;
        await page.Mouse.MoveAsync(from.X + 40, from.Y + 40);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(from.X - 60, from.Y + 40, new() { Steps = 6 });
        await Assertions.Expect(page.Locator("[data-bench] .hl-shadow.wrong")).ToHaveCountAsync(1);
        await Assertions.Expect(page.Locator("[data-bench] .hl-shadow.hl-conflict").First).ToBeAttachedAsync();

        // Escape lets go: nothing was moved.
        await page.Keyboard.PressAsync("Escape");
        await Assertions.Expect(page.Locator("[data-bench] .hl-shadow")).ToHaveCountAsync(0);
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Undo" })).ToBeDisabledAsync();
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_finger_takes_a_piece_by_a_tap_and_then_drags_it_onto_another_board()
    {
        IPage page = await OpenAsync(768, 1024);
        ILocator first = page.Locator("[data-bench] [data-spot='0']");
        LocatorBoundingBoxResult at = (await first.BoundingBoxAsync())!;
        Assert.DoesNotContain("none", await first.EvaluateAsync<string>("e => getComputedStyle(e).touchAction"), StringComparison.Ordinal);
        await Finger(page, "pointerdown", at.X + 20, at.Y + 20);
        await Finger(page, "pointerup", at.X + 20, at.Y + 20);
        await Assertions.Expect(page.Locator("[data-bench] [data-spot='0']")).ToHaveClassAsync(new Regex("chosen"));
        Assert.Equal("none", await page.Locator("[data-bench] [data-spot='0']").EvaluateAsync<string>("e => getComputedStyle(e).touchAction"));
        await page.Locator("[data-board='1']").EvaluateAsync("e => e.scrollIntoView({ block: 'center' })");
        LocatorBoundingBoxResult now = (await page.Locator("[data-bench] [data-spot='0']").BoundingBoxAsync())!, board = (await page.Locator("[data-board='1'] svg").BoundingBoxAsync())!;
        await Finger(page, "pointerdown", now.X + 20, now.Y + 20);
        await Finger(page, "pointermove", now.X + 40, now.Y + 60);
        await Finger(page, "pointermove", board.X + 20, board.Y + 20);
        await Assertions.Expect(page.Locator("[data-board='1']")).ToHaveClassAsync("taking");
        await Finger(page, "pointerup", board.X + 20, board.Y + 20);
        await Assertions.Expect(Told(page)).ToHaveTextAsync(new Regex("now lies on board 2"));
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Everything_goes_by_keyboard_alone_and_is_told()
    {
        IPage page = await OpenAsync();
        await page.Locator("[data-bench]").FocusAsync();
        await PressAsync(page, "n", "mm from the left and .* mm from below on board 1, .* mm");
        (double x, double y) = (double.Parse(await X(page)), double.Parse(await Y(page)));
        await PressAsync(page, "ArrowRight", "lies");
        Assert.Equal((x, y + 1), (double.Parse(await X(page)), double.Parse(await Y(page))));
        await PressAsync(page, "Shift+ArrowDown", Invariant($"lies {x + 10} mm"));
        await PressAsync(page, "r", "turned to (90|180) degrees");
        await PressAsync(page, "Control+z", "Undone");
        await PressAsync(page, "l", "is locked");
        await PressAsync(page, "ArrowRight", "Found a locked piece; wanted a piece that is not locked; unlock it first");
        await PressAsync(page, "l", "is no longer locked");
        await PressAsync(page, "Shift+PageDown", "now lies on board 2");
        await PressAsync(page, "PageDown", "This is the last board");
        await PressAsync(page, "PageUp", "^Board 1, 9 pieces");
        await PressAsync(page, "Control+z", "Undone");
        await PressAsync(page, "Control+y", "Done again");
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_number_in_the_sentence_lays_the_piece_and_what_is_wrong_is_numbered_and_keeps_from_saving()
    {
        IPage page = await OpenAsync();
        await page.GetByLabel("Piece", new() { Exact = true }).SelectOptionAsync("0");
        await Assertions.Expect(Told(page)).ToHaveTextAsync(new Regex("on board 1"));
        await page.GetByLabel("From left, mm").FillAsync("2");
        await page.GetByRole(AriaRole.Button, new() { Name = "Lay it there" }).ClickAsync();
        await Assertions.Expect(Told(page)).ToHaveTextAsync(new Regex("is 2 mm from the edge; wanted at least 8 mm"));
        await Assertions.Expect(page.Locator("[data-conflicts] li").First).ToContainTextAsync("1 · board 1:");
        await Assertions.Expect(page.Locator("[data-bench] .hl-badge")).ToHaveCountAsync(1);
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Save layout" })).ToBeDisabledAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "As saved" }).ClickAsync();
        await Assertions.Expect(page.Locator("[data-figure=conflicts]")).ToHaveTextAsync("0");
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_piece_taken_off_is_missed_and_put_back()
    {
        IPage page = await OpenAsync();
        await page.Locator("[data-bench]").FocusAsync();
        await PressAsync(page, "n", "on board 1");
        await PressAsync(page, "Delete", "Taken off board 1");
        ILocator put = page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Put Trail sign") });
        await Assertions.Expect(put).ToContainTextAsync("1 without a place");
        await put.ClickAsync();
        await Assertions.Expect(Told(page)).ToHaveTextAsync(new Regex("now lies on board 1, .* No conflict."));
        await page.Context.CloseAsync();
    }

    internal static ILocator Told(IPage page) => page.Locator("[data-told]");

    internal static async Task PressAsync(IPage page, string key, string told)
    {
        await page.Keyboard.PressAsync(key);
        await Assertions.Expect(Told(page)).ToHaveTextAsync(new Regex(told));
    }

    private static Task<string> X(IPage page) => page.GetByLabel("From left, mm").InputValueAsync();

    private static Task<string> Y(IPage page) => page.GetByLabel("From below, mm").InputValueAsync();

    private static Task Finger(IPage page, string type, double x, double y) => page.Locator("[data-bench]").EvaluateAsync(
        "(bench, [type, x, y]) => { const over = type === 'pointerdown' ? document.elementFromPoint(x, y) : bench; bench.setPointerCapture = () => {}; "
        + "over.dispatchEvent(new PointerEvent(type, { bubbles: true, pointerId: 7, pointerType: 'touch', isPrimary: true, button: 0, clientX: x, clientY: y })); }",
        new object[] { type, x, y });

    private async Task<IPage> OpenAsync(int width = 1440, int height = 900)
    {
        IPage page = await fixture.OpenAsync(Path, width, height);
        await page.Locator("[data-hand-layout][data-live=true]").WaitForAsync(new() { Timeout = 60_000 });
        return page;
    }
}
