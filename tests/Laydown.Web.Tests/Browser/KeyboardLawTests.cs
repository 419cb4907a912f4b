using Microsoft.Playwright;

namespace Laydown.Web.Tests.Browser;

/// <summary>Everything by keyboard, and large enough for a finger.</summary>
public sealed class KeyboardLawTests(PageFixture fixture) : IClassFixture<PageFixture>
{
    private const string Focused = "() => { const e = document.activeElement; const s = getComputedStyle(e); const r = e.getBoundingClientRect(); "
        + "return { text: (e.innerText || e.getAttribute('aria-label') || e.tagName).trim(), tag: e.tagName, outline: s.outlineStyle !== 'none' && parseFloat(s.outlineWidth) > 0, "
        + "inside: r.bottom > 0 && r.top < innerHeight && r.width > 0 }; }";

    public static TheoryData<string> Pages() => ["/", "/orders", "/items/TW-1041-1", "/runs", "/runs/R-20261126-01", "/runs/R-20261126-01/set-up", "/runs/R-20261126-01/layout", "/conditions/long-belt-boards", "/named-colours", "/readings", "/looks/TW-1042-1/L-2", "/proof/open", "/shop", "/design"];

    [Theory, MemberData(nameof(Pages))]
    public async Task The_tab_key_walks_through_every_control_with_a_visible_ring(string path)
    {
        IPage page = await fixture.OpenAsync(path);
        await page.WaitForTimeoutAsync(300);
        int controls = await page.EvaluateAsync<int>(
            "[...document.querySelectorAll('a[href],button,input,summary,select,[tabindex=\"0\"]')].filter(e => e.checkVisibility() && !e.disabled && !(e.type === 'radio' && !e.checked && document.querySelector(`input[name=\"${e.name}\"]:checked`))).length");
        HashSet<string> seen = [];
        int steps = 0;
        for (; steps < controls + 5; steps++)
        {
            await page.Keyboard.PressAsync("Tab");
            FocusSeen focus = await page.EvaluateAsync<FocusSeen>(Focused);
            if (focus.Tag == "BODY")
                break;
            Assert.True(focus.Outline, Invariant($"{path}: no ring on {focus.Tag} {focus.Text}"));
            Assert.True(focus.Inside, Invariant($"{path}: {focus.Tag} {focus.Text} has focus outside the window"));
            seen.Add(focus.Text);
        }

        Assert.Contains("Skip to content", seen);
        Assert.InRange(steps, controls - 2, controls + 2);
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task The_skip_link_leads_to_the_main_part()
    {
        IPage page = await fixture.OpenAsync("/runs");
        await page.Keyboard.PressAsync("Tab");
        await page.Keyboard.PressAsync("Enter");
        Assert.Equal("content", await page.EvaluateAsync<string>("document.activeElement.id"));
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_place_on_the_page_is_shown_by_keyboard()
    {
        IPage page = await fixture.OpenAsync("/items/TW-1041-1");
        ILocator second = page.GetByRole(AriaRole.Button, new() { Name = "Show place 2" });
        await Assertions.Expect(second).ToHaveAttributeAsync("aria-pressed", "false");
        await page.Locator("[data-live=true]").WaitForAsync(new() { Timeout = 60_000 });
        await second.FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(second).ToHaveAttributeAsync("aria-pressed", "true");
        await Assertions.Expect(page.Locator("svg.picture g.chosen text")).ToHaveTextAsync("2");
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Orders_can_be_found_by_words_and_by_state()
    {
        IPage page = await fixture.OpenAsync("/orders");
        await page.Locator("[data-live=true]").WaitForAsync(new() { Timeout = 60_000 });
        await page.GetByLabel("Order, customer, title or stock").FillAsync("otter");
        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToHaveTextAsync("1 item in 1 order");
        await page.GetByLabel("Order, customer, title or stock").FillAsync("");
        await page.GetByRole(AriaRole.Radio, new() { Name = "held back" }).CheckAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToHaveTextAsync("2 items in 2 orders");
        await page.Context.CloseAsync();
    }

    [Theory]
    [InlineData(1024, 768)]
    [InlineData(768, 1024)]
    public async Task At_the_press_every_target_is_large_enough_for_a_finger(int width, int height)
    {
        IPage page = await fixture.OpenAsync("/runs/R-20261126-01/set-up", width, height, scripts: false);
        string[] small = await page.EvaluateAsync<string[]>(
            "[...document.querySelectorAll('main a[href],main button,main summary,.head a')].filter(e => e.checkVisibility()).filter(e => e.getBoundingClientRect().height < 44).map(e => e.innerText)");
        Assert.Empty(small);
        await page.Context.CloseAsync();
    }

    private sealed record FocusSeen
    {
        public string Text { get; init; } = "";

        public string Tag { get; init; } = "";

        public bool Outline { get; init; }

        public bool Inside { get; init; }
    }
}
