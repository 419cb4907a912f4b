using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Laydown.Web.Tests.Browser;

/// <summary>Runs of the week moved in Chromium: by keys, by mouse and by finger, taken back, and by the form where no script runs.</summary>
public sealed partial class WeekPageLawTests(PageFixture fixture) : IClassFixture<PageFixture>
{
    private const string Chosen = "() => document.activeElement.dataset.run";

    [Fact]
    public async Task A_run_moved_by_keys_begins_where_it_was_put_and_is_taken_back()
    {
        IPage page = await OpenAsync();
        ILocator bar = page.Locator("[data-run]").First, told = page.Locator("[data-told]");
        string id = (await bar.GetAttributeAsync("data-run"))!, before = (await bar.GetAttributeAsync("aria-label"))!;
        await bar.FocusAsync();
        await page.Keyboard.PressAsync("Shift+ArrowRight");
        await Assertions.Expect(told).ToContainTextAsync("would begin");
        string wanted = Begins().Match((await told.TextContentAsync())!).Groups[1].Value;

        // One step on and back again: each time what is told follows.
        await page.Keyboard.PressAsync("ArrowRight");
        await Assertions.Expect(told).Not.ToContainTextAsync($"would begin {wanted}");
        await page.Keyboard.PressAsync("ArrowLeft");
        await Assertions.Expect(told).ToContainTextAsync($"would begin {wanted}");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(told).ToContainTextAsync($"{id} was put: it begins {wanted}");
        ILocator moved = page.Locator($"[data-run='{id}']");
        await Assertions.Expect(moved).ToHaveAttributeAsync("aria-label", new Regex($"begins {wanted}.*put by hand"));
        Assert.Equal(id, await page.EvaluateAsync<string>(Chosen));
        await page.Keyboard.PressAsync("Control+z");
        await Assertions.Expect(told).ToContainTextAsync("Taken back");
        await Assertions.Expect(moved).ToHaveAttributeAsync("aria-label", before);
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Escape_leaves_a_run_where_it_is_and_n_takes_the_next()
    {
        IPage page = await OpenAsync();
        ILocator bar = page.Locator("[data-run]").First;
        string label = (await bar.GetAttributeAsync("aria-label"))!;
        await bar.FocusAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        await Assertions.Expect(page.Locator(".wk-ghost")).ToHaveCountAsync(1);
        await page.Keyboard.PressAsync("Escape");
        await Assertions.Expect(page.Locator("[data-told]")).ToContainTextAsync("stays where it is");
        await Assertions.Expect(page.Locator(".wk-ghost")).ToHaveCountAsync(0);
        Assert.Equal(label, await bar.GetAttributeAsync("aria-label"));
        await page.Keyboard.PressAsync("n");
        Assert.Equal(await page.Locator("[data-run]").Nth(1).GetAttributeAsync("data-run"), await page.EvaluateAsync<string>(Chosen));
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_bar_dragged_by_mouse_is_put_where_it_is_dropped()
    {
        IPage page = await OpenAsync();
        ILocator bar = page.Locator("[data-run]").First;
        string id = (await bar.GetAttributeAsync("data-run"))!;
        LocatorBoundingBoxResult box = (await bar.BoundingBoxAsync())!;
        await page.Mouse.MoveAsync(box.X + 12, box.Y + 20);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(box.X + 240, box.Y + 22, new() { Steps = 6 });
        await Assertions.Expect(page.Locator("[data-told]")).ToContainTextAsync("would begin");
        await page.Mouse.UpAsync();
        await Assertions.Expect(page.Locator("[data-told]")).ToContainTextAsync($"{id} was put");
        await Assertions.Expect(page.Locator($"[data-run='{id}']")).ToHaveAttributeAsync("aria-label", new Regex("put by hand"));
        await page.GetByRole(AriaRole.Button, new() { Name = "Take it back" }).ClickAsync();
        await Assertions.Expect(page.Locator("[data-told]")).ToContainTextAsync("Taken back");
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_run_taken_to_another_press_opens_the_page_that_tells_what_it_would_be_there()
    {
        IPage page = await OpenAsync();
        ILocator bar = page.Locator("[data-run]").First;
        string id = (await bar.GetAttributeAsync("data-run"))!;
        await bar.FocusAsync();
        await page.Keyboard.PressAsync((await bar.GetAttributeAsync("aria-label"))!.Contains("Short belt", StringComparison.Ordinal) ? "ArrowUp" : "ArrowDown");
        await Assertions.Expect(page.Locator("[data-told]")).ToContainTextAsync("planned anew for that press");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = $"Another press for {id}" })).ToBeVisibleAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Table, new() { Name = "The run on other presses" })).ToBeVisibleAsync();
        Assert.Contains("at=2026-11-2", page.Url, StringComparison.Ordinal);
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_finger_takes_a_bar_by_a_tap_and_then_drags_it()
    {
        IPage page = await OpenAsync(820, 1180);
        await page.EvaluateAsync("""
            () => {
              const bar = [...document.querySelectorAll('[data-run]')].at(-1), box = bar.getBoundingClientRect();
              const at = (x, type) => bar.dispatchEvent(new PointerEvent(type, { pointerId: 7, pointerType: 'touch', button: 0, clientX: x, clientY: box.top + 20, bubbles: true, cancelable: true }));
              bar.setPointerCapture = () => {};
              window.moved = [];
              at(box.left + 8, 'pointerdown'); at(box.left + 90, 'pointermove'); at(box.left + 90, 'pointerup');
              window.moved.push(document.querySelectorAll('.wk-ghost').length);
              at(box.left + 8, 'pointerdown'); at(box.left + 90, 'pointermove');
              window.moved.push(document.querySelectorAll('.wk-ghost').length);
              at(box.left + 90, 'pointerup');
            }
            """);
        Assert.Equal("0 1", await page.EvaluateAsync<string>("window.moved.join(' ')"));
        await Assertions.Expect(page.Locator("[data-told]")).ToContainTextAsync("was put");
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Bars_and_links_of_the_drawing_are_large_enough_for_a_finger()
    {
        foreach ((int width, int height) in new[] { (820, 1180), (320, 640) })
        {
            IPage page = await OpenAsync(width, height);
            string[] small = await page.EvaluateAsync<string[]>(
                "[...document.querySelectorAll('.wk-run, .wk-under a, .wk-keys summary')].filter(e => { const r = e.getBoundingClientRect(); return r.width < 24 || r.height < 24; }).map(e => e.outerHTML.slice(0, 80))");
            Assert.Empty(small);
            Assert.True(await page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= window.innerWidth"));
            await page.Context.CloseAsync();
        }
    }

    [Fact]
    public async Task Benches_and_care_stand_under_the_runs_by_name()
    {
        IPage page = await OpenAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Cutting table" })).ToBeVisibleAsync();
        ILocator table = page.GetByRole(AriaRole.Table, new() { Name = "Runs at Packing table" });
        await Assertions.Expect(table).ToBeVisibleAsync();
        await Assertions.Expect(table.GetByRole(AriaRole.Columnheader, new() { Name = "Place" })).ToBeVisibleAsync();
        await page.Locator("#care summary").ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Table, new() { Name = "Care in the week" })).ToContainTextAsync("Try the stop devices and guards");
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Without_script_the_form_puts_a_run()
    {
        IPage page = await fixture.OpenAsync("/week", scripts: false);
        string id = (await page.Locator("#put-run option").First.GetAttributeAsync("value"))!;
        await page.GetByLabel("Begins, by the shop's clock").FillAsync("2026-11-27T10:00");
        await page.GetByRole(AriaRole.Button, new() { Name = "Put it there" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = $"Let {id} go where it falls" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = $"Let {id} go where it falls" })).ToHaveCountAsync(0);
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Without_script_other_presses_are_waited_for_on_a_page_of_their_own()
    {
        IPage page = await fixture.OpenAsync("/week/press/R-20261126-01", scripts: false);
        await page.GetByRole(AriaRole.Link, new() { Name = "Wait for it on a page of its own" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Table, new() { Name = "The run on other presses" })).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("#trying")).ToHaveTextAsync("");
        await page.Context.CloseAsync();
    }

    private async Task<IPage> OpenAsync(int width = 1440, int height = 900)
    {
        IPage page = await fixture.OpenAsync("/week", width, height);
        await page.Locator("[data-week-top][data-live=true]").WaitForAsync(new() { Timeout = 60_000 });
        return page;
    }

    [GeneratedRegex("would begin (.*?),")]
    private static partial Regex Begins();
}
