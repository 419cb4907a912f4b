using System.Globalization;
using System.Text.RegularExpressions;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Laydown.Web.Tests.Sample;
using Microsoft.Playwright;

namespace Laydown.Web.Tests.Browser;

/// <summary>The light table as a person uses it: lights, size, places, two looks beside each other.</summary>
public sealed partial class LightTableLawTests(PageFixture fixture) : IClassFixture<PageFixture>
{
    private const string Table = "document.querySelector('[data-light-table]').lightTable";

    [Fact]
    public async Task The_picture_shows_the_light_the_optics_give_by_day_and_lit()
    {
        IPage page = await OpenAsync();
        foreach ((string button, double lux, double lamp) in new[] { ("By day", 500.0, 0.0), ("Night", 20.0, 3000.0) })
        {
            await page.GetByRole(AriaRole.Button, new() { Name = button }).ClickAsync();
            await page.GetByRole(AriaRole.Radio, new() { Name = lamp > 0 ? "the lit piece" : "the room" }).CheckAsync();
            await WholeAsync(page);

            // The middle of the sky, whose pixels are all alike over some way.
            byte[] seen = await PixelAsync(page, 600, 40);
            var told = fixture.Shop.Services.Proof.Point.At(fixture.Shop.Services.Layers.ShowLook.Show(SampleLooks.Item, "L-2").Value, 475, 34).Value;
            var look = lamp > 0 ? told.Night : told.Day;
            Assert.InRange(seen[0], look.Red - 3, look.Red + 3);
            Assert.InRange(seen[1], look.Green - 3, look.Green + 3);
            Assert.InRange(seen[2], look.Blue - 3, look.Blue + 3);
            Assert.Equal((lux, lamp), (await page.EvaluateAsync<double>(Table + ".roomNow * Math.PI"), await page.EvaluateAsync<double>(Table + ".lampNow")));
        }

        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task The_sliders_say_lux_and_luminance_and_work_by_keyboard()
    {
        IPage page = await OpenAsync();
        ILocator room = page.GetByLabel("Room D50"), lamp = page.GetByLabel("Lamp LED-B4");
        await room.FocusAsync();
        await page.Keyboard.PressAsync("End");
        await Assertions.Expect(room).ToHaveAttributeAsync("aria-valuetext", "2000 lux");
        await page.Keyboard.PressAsync("Home");
        await Assertions.Expect(room).ToHaveAttributeAsync("aria-valuetext", "0 lux");
        await lamp.FocusAsync();
        await page.Keyboard.PressAsync("End");
        await Assertions.Expect(lamp).ToHaveAttributeAsync("aria-valuetext", "3000 candela per square metre");
        await page.GetByRole(AriaRole.Radio, new() { Name = "the lit piece" }).CheckAsync();
        Assert.InRange(double.Parse(await page.Locator("[data-white-said]").InnerTextAsync(), CultureInfo.InvariantCulture), 50, 3000);
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task The_section_follows_the_lamp()
    {
        IPage page = await OpenAsync();
        ILocator section = page.Locator("[data-follows-lamp]");
        await Assertions.Expect(section).ToHaveClassAsync(LampOff());
        await page.GetByRole(AriaRole.Button, new() { Name = "Night" }).ClickAsync();
        await Assertions.Expect(section).Not.ToHaveClassAsync(LampOff());
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task By_keyboard_one_enlarges_moves_and_asks_at_the_cross_hair()
    {
        IPage page = await OpenAsync();
        ILocator screen = page.GetByRole(AriaRole.Application);
        await screen.FocusAsync();
        double fit = await page.EvaluateAsync<double>(Table + ".view.pxPerMm");
        await page.Keyboard.PressAsync("+");
        await page.Keyboard.PressAsync("+");
        Assert.Equal(1.5625, await page.EvaluateAsync<double>(Table + ".view.pxPerMm") / fit, tolerance: 1e-9);
        await page.Keyboard.PressAsync("ArrowRight");
        Assert.True(await page.EvaluateAsync<double>(Table + ".view.x") > 600);
        await page.Keyboard.PressAsync("Home");
        Assert.Equal(fit, await page.EvaluateAsync<double>(Table + ".view.pxPerMm"), tolerance: 1e-9);
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("[data-told]")).ToContainTextAsync("600 mm from the left, 400 mm from the top");
        await Assertions.Expect(page.Locator("[data-point-panel]")).ToContainTextAsync("Off the wish, ΔE00");
        await Assertions.Expect(page.GetByRole(AriaRole.Img, new() { NameRegex = Transmittance() })).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("[data-point-panel]")).ToContainTextAsync("86 %");
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task At_full_size_a_pixel_of_the_screen_is_a_pixel_of_the_ink()
    {
        IPage page = await OpenAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Pixels" }).ClickAsync();
        await WholeAsync(page);
        Assert.Equal(1, await page.EvaluateAsync<double>(Table + ".screens[0].tiles.scale"), tolerance: 1e-9);
        Assert.True(await page.EvaluateAsync<bool>($"[...{Table}.screens[0].tiles.tiles.keys()].some(k => k.startsWith('0/'))"));

        // And no further than 32 of the screen for one of the ink.
        await page.GetByRole(AriaRole.Application).FocusAsync();
        for (int i = 0; i < 30; i++)
            await page.Keyboard.PressAsync("+");
        Assert.Equal(32, await page.EvaluateAsync<double>(Table + ".screens[0].tiles.scale"), tolerance: 1e-9);
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Two_looks_show_the_same_place_size_and_light()
    {
        IPage page = await OpenAsync("/looks/TW-1042-1/L-1?with=L-2");
        await page.GetByRole(AriaRole.Application).First.FocusAsync();
        await page.Keyboard.PressAsync("+");
        await page.Keyboard.PressAsync("ArrowUp");
        Assert.True(await page.EvaluateAsync<bool>($"{Table}.screens[0].tiles.view === {Table}.screens[1].tiles.view"));
        Assert.True(await page.EvaluateAsync<bool>($"{Table}.screens[0].tiles.light.room === {Table}.screens[1].tiles.light.room"));

        // A row for each look there is, under one of headings; another test of this shop may have solved one more.
        ILocator rows = page.GetByRole(AriaRole.Region, new() { Name = "Looks of TW-1042-1 beside each other" }).GetByRole(AriaRole.Row);
        await Assertions.Expect(rows).ToHaveCountAsync(1 + fixture.Shop.Services.Layers.ListLooks.List(SampleLooks.Item).Count);
        await Assertions.Expect(rows.Filter(new() { HasText = "L-1" })).ToContainTextAsync("shown");
        await Assertions.Expect(rows.Filter(new() { HasText = "L-2" })).ToContainTextAsync("take away");
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_place_a_customer_means_is_shown_with_its_light()
    {
        IPage page = await OpenAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Show place 1" }).ClickAsync();
        Assert.Equal((360, 224), (await page.EvaluateAsync<double>(Table + ".view.x"), await page.EvaluateAsync<double>(Table + ".view.y")));
        Assert.Equal("night", await page.EvaluateAsync<string>(Table + ".pinView"));
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Without_script_the_two_still_pictures_stand()
    {
        IPage page = await fixture.OpenAsync("/looks/TW-1042-1/L-2", scripts: false);
        await Assertions.Expect(page.GetByRole(AriaRole.Img, new() { NameRegex = ByDay() })).ToBeVisibleAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Application)).ToBeHiddenAsync();
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_customer_pins_a_change_and_the_shop_sees_it_as_words()
    {
        IPage page = await OpenAsync("/proof/open");
        await page.GetByRole(AriaRole.Button, new() { Name = "Night" }).ClickAsync();
        await page.GetByRole(AriaRole.Application).FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("[data-pin-said]")).ToHaveTextAsync("600 mm from the left, 400 mm from the top, with the lamp on");
        await Assertions.Expect(page.GetByRole(AriaRole.Radio, new() { Name = "change this" })).ToBeCheckedAsync();
        await page.GetByLabel("Comment").FillAsync("<img src=x onerror=\"document.title='broken'\"> darker & warmer");
        await page.GetByLabel("Your name").FillAsync("<b>Grace</b>");
        await page.GetByRole(AriaRole.Button, new() { Name = "Send the answer" }).ClickAsync();
        await Assertions.Expect(page.GetByText("Thank you.")).ToBeVisibleAsync();
        await Assertions.Expect(page.GetByText("<img src=x onerror=\"document.title='broken'\"> darker & warmer")).ToBeVisibleAsync();

        IPage shop = await fixture.OpenAsync("/items/TW-1042-1");
        await Assertions.Expect(shop.GetByText("<img src=x onerror=\"document.title='broken'\"> darker & warmer")).ToBeVisibleAsync();
        await Assertions.Expect(shop.GetByText("600 mm from the left, 400 mm from the top, with the lamp on")).ToBeVisibleAsync();
        await Assertions.Expect(shop.GetByText("<b>Grace</b>")).ToBeVisibleAsync();
        Assert.NotEqual("broken", await shop.TitleAsync());
        await page.Context.CloseAsync();
        await shop.Context.CloseAsync();
    }

    [Theory]
    [InlineData("/looks/TW-1042-1/L-2")]
    [InlineData("/looks/TW-1042-1/L-1?with=L-2")]
    [InlineData("/looks/TW-1042-1")]
    [InlineData("/proof/open")]
    public async Task No_rule_is_broken_on_a_phone_with_the_lamp_on_and_a_place_picked(string path)
    {
        foreach (ColorScheme scheme in (ColorScheme[])[ColorScheme.Light, ColorScheme.Dark])
        {
            IPage page = await fixture.OpenAsync(path, 360, 740, scheme);
            if (path != "/looks/TW-1042-1")
            {
                await page.Locator("[data-light-table][data-whole=true]").WaitForAsync();
                await page.GetByRole(AriaRole.Button, new() { Name = "Night" }).ClickAsync();
                await page.GetByRole(AriaRole.Application).First.FocusAsync();
                await page.Keyboard.PressAsync("Enter");
                await page.WaitForTimeoutAsync(500);
            }

            foreach (int width in (int[])[360, 768, 1280])
            {
                await page.SetViewportSizeAsync(width, 800);
                AxeResult result = await page.RunAxe();
                Assert.Empty(result.Violations.Select(v => Invariant($"{path} {scheme} {width}: {v.Id}: {v.Help}: {string.Join("; ", v.Nodes.Take(3).Select(n => n.Html))}")));
                Assert.True(await page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= window.innerWidth"), Invariant($"{path} is wider than {width} px"));
            }

            await page.Context.CloseAsync();
        }
    }

    [Fact]
    public async Task A_place_out_of_reach_says_why()
    {
        IPage page = await OpenAsync();
        await page.GetByRole(AriaRole.Radio, new() { Name = "why it is out of reach" }).CheckAsync();
        await Assertions.Expect(page.GetByText("night brighter than the panel gets")).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Application).FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("[data-told]")).ToContainTextAsync("Out of reach: night brighter than the panel gets.");
        await page.Keyboard.PressAsync("Shift+ArrowUp");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("[data-told]")).Not.ToContainTextAsync("Out of reach");
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task While_dragging_a_preview_stands_on_the_table_until_it_is_ended()
    {
        IPage page = await OpenAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Preview while dragging" }).ClickAsync();
        await Assertions.Expect(page.Locator("[data-preview-said]")).ToContainTextAsync("Preview of");
        Assert.True(await page.EvaluateAsync<bool>(Table + ".screens[0].tiles.whole !== null"));
        ILocator weight = page.GetByLabel("Day or night first");
        await weight.FocusAsync();
        await page.Keyboard.PressAsync("End");
        await Assertions.Expect(weight).ToHaveAttributeAsync("aria-valuetext", "night first, 10 to 1");
        await Assertions.Expect(page.Locator("[data-solve-form]")).ToHaveAttributeAsync("data-previewed", Later());
        await page.GetByRole(AriaRole.Button, new() { Name = "Show the look again" }).ClickAsync();
        Assert.True(await page.EvaluateAsync<bool>(Table + ".screens[0].tiles.whole === null"));
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Solving_in_full_from_the_page_ends_on_the_new_look()
    {
        IPage page = await OpenAsync();
        await page.GetByLabel("Fineness, ppi").SelectOptionAsync("25");
        await page.GetByRole(AriaRole.Button, new() { Name = "Solve in full" }).ClickAsync();
        await page.WaitForURLAsync(NewLook(), new() { Timeout = 240_000 });
        await Assertions.Expect(page.GetByText("solved for two pictures")).ToBeVisibleAsync();
        await Assertions.Expect(page.GetByText("Off the wish by day, mean").First).ToBeVisibleAsync();
        await page.Locator("[data-light-table][data-whole=true]").WaitForAsync();
        await page.Context.CloseAsync();
    }

    private async Task<IPage> OpenAsync(string path = "/looks/TW-1042-1/L-2")
    {
        IPage page = await fixture.OpenAsync(path, 1280, 800);
        await page.Locator("[data-light-table][data-live=true]").WaitForAsync();
        await WholeAsync(page);
        return page;
    }

    private static Task WholeAsync(IPage page) => page.Locator("[data-light-table][data-whole=true]").WaitForAsync();

    // Drawn once more within the same turn, because a canvas is empty after it was shown.
    private static async Task<byte[]> PixelAsync(IPage page, int xMm, int yMm) => [.. (await page.EvaluateAsync<int[]>(
        """
        ([xMm, yMm]) => {
          const tiles = document.querySelector('[data-light-table]').lightTable.screens[0].tiles, gl = tiles.gl, out = new Uint8Array(4);
          tiles.draw();
          const [x, y] = tiles.toScreen(xMm, yMm);
          gl.readPixels(Math.round(x * tiles.ratio), tiles.canvas.height - Math.round(y * tiles.ratio), 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, out);
          return [...out];
        }
        """, new[] { xMm, yMm })).Select(v => (byte)v)];

    [GeneratedRegex("^[2-9]$")]
    private static partial Regex Later();

    [GeneratedRegex("/looks/TW-1042-1/L-3$")]
    private static partial Regex NewLook();

    [GeneratedRegex("lamp-off")]
    private static partial Regex LampOff();

    [GeneratedRegex("^Transmittance")]
    private static partial Regex Transmittance();

    [GeneratedRegex("by day, lamp off$")]
    private static partial Regex ByDay();
}
