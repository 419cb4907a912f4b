using Microsoft.Playwright;

namespace Laydown.Web.Tests.Browser;

/// <summary>At 320 px, the width WCAG 2.2 asks reflow for (1.4.10), nothing is scrolled sideways but what scrolls within a frame of its own.</summary>
public sealed class NarrowLawTests(PageFixture fixture) : IClassFixture<PageFixture>
{
    public static TheoryData<string> Pages() => [.. SamplePages.All];

    [Theory, MemberData(nameof(Pages))]
    public async Task No_page_scrolls_sideways(string path)
    {
        IPage page = await fixture.OpenAsync(path, 320, 640);
        await page.WaitForTimeoutAsync(300);
        string[] wide = await page.EvaluateAsync<string[]>(
            "document.documentElement.scrollWidth <= 320 ? [] : [`page ${document.documentElement.scrollWidth} px`, ...[...document.querySelectorAll('body *')]"
            + ".filter(e => e.checkVisibility() && e.getBoundingClientRect().right > 320.5).slice(0, 8).map(e => `${e.tagName}.${e.getAttribute('class')} ${Math.round(e.getBoundingClientRect().right)}`)]");
        Assert.Empty(wide);
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_page_that_is_too_wide_is_caught()
    {
        IPage page = await fixture.OpenAsync("/runs", 320, 640);
        await page.EvaluateAsync("document.querySelector('main').insertAdjacentHTML('beforeend', '<pre>' + 'wide'.repeat(200) + '</pre>')");
        Assert.True(await page.EvaluateAsync<int>("document.documentElement.scrollWidth") > 320);
        await page.Context.CloseAsync();
    }
}
