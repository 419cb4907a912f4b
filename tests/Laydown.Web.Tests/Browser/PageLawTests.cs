using Microsoft.Playwright;

namespace Laydown.Web.Tests.Browser;

/// <summary>Pictures of every page for people to look at, in <c>LAYDOWN_SCREENSHOTS</c> where that is set; always checks that the page has one heading and a main landmark.</summary>
public sealed class PageLawTests(PageFixture fixture) : IClassFixture<PageFixture>
{
    public static TheoryData<string> Pages() => [.. SamplePages.All];

    [Theory, MemberData(nameof(Pages))]
    public async Task A_page_has_one_heading_one_main_part_and_asks_for_nothing_outside(string path)
    {
        IPage page = await fixture.OpenAsync("/design");
        List<string> asked = [];
        List<string> errors = [];
        page.Request += (_, request) => asked.Add(request.Url);
        page.Console += (_, message) => { if (message.Type == "error" && !message.Text.Contains("404", StringComparison.Ordinal) && !message.Text.Contains("410", StringComparison.Ordinal)) errors.Add(message.Text); };
        page.PageError += (_, error) => errors.Add(error);
        await page.GotoAsync(fixture.At(path), new() { WaitUntil = WaitUntilState.Load });
        await page.WaitForTimeoutAsync(300);
        Assert.Equal(1, await page.Locator("h1").CountAsync());
        Assert.Equal(1, await page.Locator("main").CountAsync());
        Assert.Equal("en", await page.Locator("html").GetAttributeAsync("lang"));
        Assert.All(asked, url => Assert.True(url.StartsWith(fixture.Address, StringComparison.Ordinal) || url.StartsWith("data:", StringComparison.Ordinal), url));
        Assert.Empty(errors);
        await KeepAsync(page, path);
        await page.Context.CloseAsync();
    }

    private static async Task KeepAsync(IPage page, string path)
    {
        if (Environment.GetEnvironmentVariable("LAYDOWN_SCREENSHOTS") is not { Length: > 0 } folder)
            return;
        string name = path == "/" ? "today" : path.Trim('/').Replace('/', '-').Replace('?', '-');
        await page.ScreenshotAsync(new() { Path = Path.Combine(folder, Invariant($"{name}-light.png")), FullPage = true });
        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Dark });
        await page.SetViewportSizeAsync(1024, 768);
        await page.ScreenshotAsync(new() { Path = Path.Combine(folder, Invariant($"{name}-dark.png")), FullPage = true });
    }
}
