using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Laydown.Web.Tests.Browser;

/// <summary>Every page against WCAG 2.2 AA as axe checks it, in Chromium, light and dark, at desk and tablet size.</summary>
public sealed class AccessibilityLawTests(PageFixture fixture) : IClassFixture<PageFixture>
{
    private static readonly (int Width, int Height)[] Sizes = [(1440, 900), (1024, 768), (768, 1024)];

    public static TheoryData<string> Pages() => [.. SamplePages.All];

    [Theory, MemberData(nameof(Pages))]
    public async Task No_page_breaks_a_rule(string path)
    {
        foreach (ColorScheme scheme in (ColorScheme[])[ColorScheme.Light, ColorScheme.Dark])
        {
            IPage page = await fixture.OpenAsync(path, Sizes[0].Width, Sizes[0].Height, scheme);
            foreach ((int width, int height) in Sizes)
            {
                await page.SetViewportSizeAsync(width, height);
                AxeResult result = await page.RunAxe();
                Assert.Empty(result.Violations.Select(v =>
                    Invariant($"{path} {scheme} {width}: {v.Id}: {v.Help}: {string.Join("; ", v.Nodes.Take(3).Select(n => n.Html))}")));
                Assert.NotEmpty(result.Passes);
                Assert.True(await page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= window.innerWidth"), Invariant($"{path} is wider than {width} px"));
            }

            await page.Context.CloseAsync();
        }
    }

    [Fact]
    public async Task A_broken_page_is_caught()
    {
        IPage page = await fixture.OpenAsync("/");
        await page.EvaluateAsync("document.querySelector('main').insertAdjacentHTML('beforeend', '<img src=\"/page/mark.svg\">')");
        Assert.Contains((await page.RunAxe()).Violations, v => v.Id == "image-alt");
        await page.Context.CloseAsync();
    }
}
