using System.Globalization;
using System.Text.RegularExpressions;
using Laydown.Web.Tests.Browser;
using Microsoft.Playwright;

namespace Laydown.Web.Tests.Layout;

/// <summary>A layout under hands, in a real browser: by mouse, by finger, by keyboard; what is told is what happened.</summary>
public sealed class HandLayoutLawTests(PageFixture fixture) : IClassFixture<PageFixture>
{
    private const string Path = "/runs/R-20261126-01/layout", Piece = "[data-bench] [data-spot='0']";

    [Fact]
    public async Task A_piece_dragged_over_its_board_lies_where_it_was_let_go_and_undo_brings_it_back()
    {
        IPage page = await OnBareBoardAsync();
        (double x, double y) = await PlaceAsync(page);
        LocatorBoundingBoxResult from = (await page.Locator(Piece).BoundingBoxAsync())!;
        await page.Mouse.MoveAsync(from.X + (from.Width / 2), from.Y + (from.Height / 2));
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(from.X + (from.Width / 2) + 40, from.Y + (from.Height / 2) + 20, new() { Steps = 4 });
        await page.Mouse.MoveAsync(from.X + (from.Width / 2) + 80, from.Y + (from.Height / 2) + 60, new() { Steps = 4 });
        await page.Mouse.UpAsync();

        // The drawing lies with its top to the right: to the right is up the board, down is to its right.
        await Assertions.Expect(Told(page)).ToHaveTextAsync(new Regex("^Trail sign, .*, copy .*, lies .* mm from the left and .* mm from below on board .*. No conflict.$"));
        (double movedX, double movedY) = await PlaceAsync(page);
        Assert.True(movedX > x + 50 && movedY > y + 50, Invariant($"{x}, {y} to {movedX}, {movedY}"));
        await page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Assertions.Expect(Told(page)).ToHaveTextAsync("Undone. No conflict.");
        Assert.Equal((x, y), await PlaceAsync(page));
        LocatorBoundingBoxResult back = (await page.Locator(Piece).BoundingBoxAsync())!;
        Assert.Equal(from.X, back.X, 1f);
        await page.GetByRole(AriaRole.Button, new() { Name = "Redo" }).ClickAsync();
        await Assertions.Expect(Told(page)).ToHaveTextAsync("Done again. No conflict.");
        Assert.Equal((movedX, movedY), await PlaceAsync(page));
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task While_it_is_in_the_air_over_the_edge_the_conflict_is_drawn()
    {
        IPage page = await OnBareBoardAsync();
        (double x, double y) = await PlaceAsync(page);
        LocatorBoundingBoxResult from = (await page.Locator(Piece).BoundingBoxAsync())!;
        await page.Mouse.MoveAsync(from.X + 60, from.Y + 60);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(from.X + 10, from.Y + 60, new() { Steps = 6 });
        await Assertions.Expect(page.Locator("[data-bench] .hl-shadow.wrong")).ToHaveCountAsync(1);
        await Assertions.Expect(page.Locator("[data-bench] .hl-shadow.hl-conflict").First).ToBeAttachedAsync();
        await Assertions.Expect(page.Locator("[data-figure=conflicts]")).ToHaveTextAsync("1");

        // Escape lets go: nothing was moved.
        await page.Keyboard.PressAsync("Escape");
        await Assertions.Expect(page.Locator("[data-bench] .hl-shadow")).ToHaveCountAsync(0);
        await Assertions.Expect(page.Locator("[data-figure=conflicts]")).ToHaveTextAsync("0");
        Assert.Equal((x, y), await PlaceAsync(page));
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_finger_takes_a_piece_by_a_tap_and_then_drags_it_onto_another_board()
    {
        IPage page = await OnBareBoardAsync(768, 1024);
        await page.Locator("[data-bench]").FocusAsync();
        await PressAsync(page, "Escape", "^Board \\d+, 1 pieces");
        Assert.NotEqual("none", await TouchActionAsync(page));
        LocatorBoundingBoxResult at = (await page.Locator(Piece).BoundingBoxAsync())!;
        await FingerAsync(page, "pointerdown", at.X + 20, at.Y + 20);
        await FingerAsync(page, "pointerup", at.X + 20, at.Y + 20);
        await Assertions.Expect(page.Locator(Piece)).ToHaveClassAsync(new Regex("chosen"));
        Assert.Equal("none", await TouchActionAsync(page));
        await page.Locator("[data-board='0']").EvaluateAsync("e => e.scrollIntoView({ block: 'center', inline: 'center' })");
        LocatorBoundingBoxResult now = (await page.Locator(Piece).BoundingBoxAsync())!, board = (await page.Locator("[data-board='0'] svg").BoundingBoxAsync())!;
        await FingerAsync(page, "pointerdown", now.X + 20, now.Y + 20);
        await FingerAsync(page, "pointermove", now.X + 40, now.Y + 60);
        await FingerAsync(page, "pointermove", board.X + 20, board.Y + 20);
        await Assertions.Expect(page.Locator("[data-board='0']")).ToHaveClassAsync("taking");
        await FingerAsync(page, "pointerup", board.X + 20, board.Y + 20);
        await Assertions.Expect(Told(page)).ToHaveTextAsync(new Regex("now lies on board"));
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Everything_goes_by_keyboard_alone_and_is_told()
    {
        IPage page = await OnBareBoardAsync();
        await page.Locator("[data-bench]").FocusAsync();
        await PressAsync(page, "n", "mm from the left and .* mm from below on board .*, .* mm");
        (double x, double y) = await PlaceAsync(page);
        await PressAsync(page, "ArrowRight", Invariant($"lies {x} mm from the left and {y + 1} mm from below"));
        Assert.Equal((x, y + 1), await PlaceAsync(page));
        await PressAsync(page, "Shift+ArrowDown", Invariant($"lies {x + 10} mm"));
        await PressAsync(page, "r", "turned to \\d+ degrees");
        await PressAsync(page, "Control+z", "Undone");
        await PressAsync(page, "l", "is locked");
        await PressAsync(page, "ArrowRight", "Found a locked piece; wanted a piece that is not locked; unlock it first");
        await PressAsync(page, "l", "is no longer locked");
        await PressAsync(page, "Shift+PageDown", "This is the last board");
        await PressAsync(page, "Shift+PageUp", "now lies on board");
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
        await Assertions.Expect(Told(page)).ToHaveTextAsync(new Regex("is 2 mm from the edge; wanted at least .* mm"));
        await Assertions.Expect(page.Locator("[data-conflicts] li").First).ToContainTextAsync("1 · board 1:");
        await Assertions.Expect(page.Locator("[data-bench] .hl-badge").First).ToBeVisibleAsync();
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
        await Assertions.Expect(put).ToContainTextAsync("without a place");
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

    private static async Task<(double X, double Y)> PlaceAsync(IPage page) => (
        double.Parse(await page.GetByLabel("From left, mm").InputValueAsync(), CultureInfo.InvariantCulture),
        double.Parse(await page.GetByLabel("From below, mm").InputValueAsync(), CultureInfo.InvariantCulture));

    private static Task<string> TouchActionAsync(IPage page) => page.Locator(Piece).EvaluateAsync<string>("e => getComputedStyle(e).touchAction");

    private static Task FingerAsync(IPage page, string type, double x, double y) => page.Locator("[data-bench]").EvaluateAsync(
        "(bench, [type, x, y]) => { const over = type === 'pointerdown' ? bench.querySelector('[data-spot=\"0\"]') : bench; bench.setPointerCapture = () => {}; "
        + "over.dispatchEvent(new PointerEvent(type, { bubbles: true, pointerId: 7, pointerType: 'touch', isPrimary: true, button: 0, clientX: x, clientY: y })); }",
        new object[] { type, x, y });

    private async Task<IPage> OpenAsync(int width = 1440, int height = 900)
    {
        IPage page = await fixture.OpenAsync(Path, width, height);
        await page.Locator("[data-hand-layout][data-live=true]").WaitForAsync(new() { Timeout = 60_000 });
        return page;
    }

    // The first piece of the first board, pulled onto a bare board of its own: nothing is near it.
    private async Task<IPage> OnBareBoardAsync(int width = 1440, int height = 900)
    {
        IPage page = await OpenAsync(width, height);
        await page.GetByRole(AriaRole.Button, new() { Name = "Add a bare board" }).ClickAsync();
        await Assertions.Expect(Told(page)).ToHaveTextAsync(new Regex("^Bare board \\d+ added. No conflict.$"));
        string bare = (await page.GetByLabel("Board it lies on").InputValueAsync())!;
        await page.Locator("[data-bench]").FocusAsync();
        await page.Locator("[data-board='0'] button").ClickAsync();
        await Assertions.Expect(Told(page)).ToHaveTextAsync(new Regex("^Board 1, "));
        await page.GetByLabel("Piece", new() { Exact = true }).SelectOptionAsync("0");
        await Assertions.Expect(Told(page)).ToHaveTextAsync(new Regex("on board 1, "));
        await page.GetByLabel("Board it lies on").SelectOptionAsync(bare);
        await Assertions.Expect(Told(page)).ToHaveTextAsync(new Regex("now lies on board .*No conflict.$"));
        return page;
    }
}
