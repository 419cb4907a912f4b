using System.Globalization;
using System.Text.RegularExpressions;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Laydown.Web.Tests.Sample;
using Microsoft.Playwright;

namespace Laydown.Web.Tests.Browser;

/// <summary>Looking at a made sheet as a person does: what is seen, places, pieces, two pictures, single dots, by hand and by keyboard.</summary>
public sealed partial class SheetLookLawTests(PageFixture fixture) : IClassFixture<PageFixture>, IAsyncLifetime
{
    private const string Look = "/runs/" + MadeSheets.Run + "/sheets/1/look";
    private const string View = "document.querySelector('[data-press-view]').pressView";

    public async ValueTask InitializeAsync() => await MadeSheets.WriteAsync(fixture.Shop, dots: true);

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    [Fact]
    public async Task The_run_leads_to_its_sheet()
    {
        IPage page = await fixture.OpenAsync("/runs/" + MadeSheets.Run);
        await page.GetByRole(AriaRole.Link, new() { NameRegex = PressFiles() }).First.ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Sheet 1 of run " + MadeSheets.Run);
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task One_ink_as_grey_shows_the_values_of_the_file()
    {
        IPage page = await OpenAsync(Look + "?files=contone&names=off");
        await page.GetByLabel("Picture").SelectOptionAsync("ink-1");
        await WholeAsync(page);
        await page.EvaluateAsync(View + ".goTo(300, 300, 30)");
        await WholeAsync(page);
        double mm = 25.4 / MadeSheets.Ppi;
        foreach ((int x, int y) in new[] { (295, 295), (297, 299), (293, 290) })
        {
            byte[] seen = await PixelAsync(page, (x + 0.5) * mm, (y + 0.5) * mm);
            int wanted = 255 - MadeSheets.Value(0, y, x);

            // A pixel is carried as 10 bits of the root of linear light; a step of that is at most 1 of 255 here and there.
            Assert.InRange(seen[0], wanted - 1, wanted + 1);
            Assert.Equal((seen[0], seen[0]), (seen[1], seen[2]));
        }

        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Single_dots_are_black_or_white_and_the_readout_says_which()
    {
        IPage page = await OpenAsync(Look);
        await page.GetByLabel("Picture").SelectOptionAsync("ink-1");
        await page.GetByLabel("From left, mm").FillAsync("200");
        await page.GetByLabel("From top, mm").FillAsync("150");
        await page.GetByRole(AriaRole.Button, new() { Name = "Go to the place" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Single dots" }).ClickAsync();
        await WholeAsync(page);
        Assert.Equal(16, await page.EvaluateAsync<double>(View + ".screens[0].tiles.scale"), tolerance: 1e-6);
        int[] at = await page.EvaluateAsync<int[]>(View + ".screens[0].tiles.pixelAt(200, 150)");
        int dot = MadeSheets.Dot(0, at[1], at[0]);
        double right = await page.EvaluateAsync<double>(View + ".table.mmPerPx"), down = await page.EvaluateAsync<double>(View + ".table.mmPerPxDown");
        byte[] seen = await PixelAsync(page, (at[0] + 0.5) * right, (at[1] + 0.5) * down);
        Assert.Equal(dot == 1 ? 0 : 255, seen[1]);
        await page.GetByRole(AriaRole.Application).First.FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("[data-readout]")).ToHaveAttributeAsync("data-read", Invariant($"{at[0]},{at[1]},0"));
        await Assertions.Expect(page.Locator("[data-ink='1'] [data-code]")).ToHaveTextAsync(dot.ToString(CultureInfo.InvariantCulture));
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task By_keyboard_one_enlarges_moves_and_reads_out_aloud()
    {
        IPage page = await OpenAsync(Look);
        ILocator screen = page.GetByRole(AriaRole.Application).First;
        await screen.FocusAsync();
        double fit = await page.EvaluateAsync<double>(View + ".view.pxPerMm");
        await page.Keyboard.PressAsync("+");
        await page.Keyboard.PressAsync("+");
        await page.Keyboard.PressAsync("-");
        Assert.Equal(1.25, await page.EvaluateAsync<double>(View + ".view.pxPerMm") / fit, tolerance: 1e-9);
        double before = await page.EvaluateAsync<double>(View + ".view.x");
        await page.Keyboard.PressAsync("ArrowLeft");
        Assert.True(await page.EvaluateAsync<double>(View + ".view.x") < before);
        await page.Keyboard.PressAsync("Home");
        Assert.Equal(fit, await page.EvaluateAsync<double>(View + ".view.pxPerMm"), tolerance: 1e-9);
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("mm from the left");
        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("Cyan");
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Under_the_pointer_the_inks_are_told()
    {
        IPage page = await OpenAsync(Look + "?files=contone");
        double[] at = await page.EvaluateAsync<double[]>(View + ".screens[0].tiles.toScreen(400, 500)");
        LocatorBoundingBoxResult box = (await page.GetByRole(AriaRole.Application).First.BoundingBoxAsync())!;
        await page.Mouse.MoveAsync((float)(box.X + at[0]), (float)(box.Y + at[1]));
        await Assertions.Expect(page.Locator("[data-read-at]")).ToContainTextAsync("mm from the left");
        await Assertions.Expect(page.Locator("[data-ink='1'] [data-percent]")).Not.ToHaveTextAsync("–");
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Two_pictures_move_together_and_the_address_says_what_is_seen()
    {
        IPage page = await OpenAsync(Look + "?files=contone");
        await page.GetByLabel("Another beside it").CheckAsync();
        await page.GetByLabel("Beside it", new() { Exact = true }).SelectOptionAsync("ink-2");
        await Assertions.Expect(page.GetByRole(AriaRole.Application)).ToHaveCountAsync(2);
        await page.GetByRole(AriaRole.Application).Last.FocusAsync();
        await page.Keyboard.PressAsync("+");
        Assert.True(await page.EvaluateAsync<bool>($"{View}.screens[0].tiles.view === {View}.screens[1].tiles.view"));
        await Assertions.Expect(page).ToHaveURLAsync(Beside());
        string link = page.Url;
        double[] seen = await page.EvaluateAsync<double[]>($"[{View}.view.x, {View}.view.y, {View}.view.pxPerMm]");

        IPage other = await OpenAsync(link[link.IndexOf("/runs", StringComparison.Ordinal)..]);
        double[] again = await other.EvaluateAsync<double[]>($"[{View}.view.x, {View}.view.y, {View}.view.pxPerMm]");
        Assert.Equal(seen[0], again[0], tolerance: 0.001);
        Assert.Equal(seen[2], again[2], tolerance: 0.001 * seen[2]);
        await Assertions.Expect(other.GetByLabel("Beside it", new() { Exact = true })).ToHaveValueAsync("ink-2");
        await page.Context.CloseAsync();
        await other.Context.CloseAsync();
    }

    [Fact]
    public async Task A_piece_from_the_list_comes_to_the_middle()
    {
        IPage page = await OpenAsync(Look);
        await page.GetByLabel("Piece", new() { Exact = true }).SelectOptionAsync("1");
        await page.GetByRole(AriaRole.Button, new() { Name = "Go to the piece" }).ClickAsync();
        Assert.True(await page.EvaluateAsync<bool>($"(() => {{ const p = {View}.sheet.pieces[1], v = {View}.view; return Math.abs(v.x - p.xMm - p.widthMm / 2) < 1e-6 && Math.abs(v.y - p.yMm - p.heightMm / 2) < 1e-6; }})()"));
        await Assertions.Expect(page.Locator("[data-read-piece]")).ToContainTextAsync("copy");
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Without_script_a_still_picture_of_the_sheet_stands()
    {
        IPage page = await fixture.OpenAsync(Look, scripts: false);
        ILocator still = page.GetByRole(AriaRole.Img, new() { NameRegex = AllLayers() });
        await Assertions.Expect(still).ToBeVisibleAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Application)).ToHaveCountAsync(0);
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_run_that_is_not_made_says_so()
    {
        IPage page = await fixture.OpenAsync("/runs/R-20261126-02/sheets/1/look");
        await Assertions.Expect(page.GetByText("This sheet cannot be looked at")).ToBeVisibleAsync();
        await page.Context.CloseAsync();
    }

    [Theory]
    [InlineData(ColorScheme.Light)]
    [InlineData(ColorScheme.Dark)]
    public async Task No_rule_is_broken_at_three_sizes(ColorScheme scheme)
    {
        IPage page = await OpenAsync(Look + "?files=contone&beside=ink-1&x=300&y=300&across=200", scheme);
        await page.GetByRole(AriaRole.Application).First.FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("mm from the left");
        foreach ((int width, int height) in new[] { (1280, 800), (800, 1100), (360, 740) })
        {
            await page.SetViewportSizeAsync(width, height);
            AxeResult result = await page.RunAxe();
            Assert.Empty(result.Violations.Select(v => Invariant($"{scheme} {width}: {v.Id}: {v.Help}: {string.Join("; ", v.Nodes.Take(3).Select(n => n.Html))}")));
            Assert.True(await page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= window.innerWidth"), Invariant($"wider than {width} px"));
        }

        await page.Context.CloseAsync();
    }

    private async Task<IPage> OpenAsync(string path, ColorScheme scheme = ColorScheme.Light)
    {
        IPage page = await fixture.OpenAsync(path, 1280, 800, scheme);
        await WholeAsync(page);
        return page;
    }

    private static async Task WholeAsync(IPage page)
    {
        await page.WaitForTimeoutAsync(50);
        await page.Locator("[data-press-view][data-whole=true]").WaitForAsync();
    }

    // The picture is read from the canvas right after it is drawn.
    private static async Task<byte[]> PixelAsync(IPage page, double xMm, double yMm) => [.. (await page.EvaluateAsync<int[]>(
        $$"""
        ([x, y]) => {
          const tiles = {{View}}.screens[0].tiles, [sx, sy] = tiles.toScreen(x, y), pixel = new Uint8Array(4), gl = tiles.gl;
          tiles.draw();
          gl.readPixels(Math.floor(sx * tiles.ratio), tiles.canvas.height - 1 - Math.floor(sy * tiles.ratio), 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, pixel);
          return [...pixel];
        }
        """,
        new[] { xMm, yMm })).Select(v => (byte)v)];

    [GeneratedRegex("Look at the press files")]
    private static partial Regex PressFiles();

    [GeneratedRegex("all layers by room light")]
    private static partial Regex AllLayers();

    [GeneratedRegex("beside=ink-2.*across=")]
    private static partial Regex Beside();
}
