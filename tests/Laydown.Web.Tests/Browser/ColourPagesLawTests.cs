using Laydown.Colour.Charts;
using Laydown.Web.Tests.Sample;
using Microsoft.Playwright;

namespace Laydown.Web.Tests.Browser;

/// <summary>What a person does on the pages of colour, by role and label.</summary>
public sealed class ColourPagesLawTests(PageFixture fixture) : IClassFixture<PageFixture>
{
    [Fact]
    public async Task A_named_colour_is_put_in_and_stands_beside_its_prediction()
    {
        IPage page = await fixture.OpenAsync("/named-colours");
        await page.GetByLabel("Short name").FillAsync("mud-flat");
        await page.GetByLabel("Name", new() { Exact = true }).FillAsync("Mud flat");
        await page.GetByLabel("L*").FillAsync("40");
        await page.GetByLabel("a*").FillAsync("4");
        await page.GetByLabel("b*").FillAsync("12");
        await page.GetByLabel("Where it comes from").FillAsync("a test");
        await page.GetByRole(AriaRole.Button, new() { Name = "Put it in" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Mud flat" })).ToBeVisibleAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Img, new() { Name = "Mud flat: wanted on the left, predicted on the right" })).ToBeVisibleAsync();
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_refused_reading_is_said_and_not_kept()
    {
        IPage page = await fixture.OpenAsync("/readings");
        await page.GetByLabel("File of readings").SetInputFilesAsync(new FilePayload { Name = "bad.csv", MimeType = "text/csv", Buffer = "C,M,Y,K,L,a,b\n"u8.ToArray() });
        await page.GetByRole(AriaRole.Button, new() { Name = "Take in" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("bad.csv");
        Assert.False(File.Exists(Path.Combine(fixture.Shop.Folder, "catalogue", "readings", "bad.csv")));
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_later_reading_is_compared_and_stands_in_the_table()
    {
        IPage page = await fixture.OpenAsync("/conditions/long-belt-boards");
        await page.GetByLabel("New readings").SetInputFilesAsync(new FilePayload { Name = "strip-9.txt", MimeType = "text/plain", Buffer = SampleColour.Readings(ChartKind.Linearise) });
        await page.GetByRole(AriaRole.Button, new() { Name = "Compare and keep" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Region, new() { Name = "Readings since the fit" }).GetByRole(AriaRole.Row)).ToHaveCountAsync(3);
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task The_slice_of_the_gamut_follows_the_slider_by_keyboard()
    {
        IPage page = await fixture.OpenAsync("/conditions/long-belt-boards");
        ILocator slider = page.GetByLabel("Slice at L*");
        await Assertions.Expect(page.GetByRole(AriaRole.Img, new() { Name = "Gamut at L* 50" })).ToBeVisibleAsync();
        await slider.FocusAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        await Assertions.Expect(page.GetByRole(AriaRole.Img, new() { Name = "Gamut at L* 60" })).ToBeVisibleAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Img, new() { Name = "Gamut at L* 50" })).ToBeHiddenAsync();
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_chart_is_made_from_the_page()
    {
        IPage page = await fixture.OpenAsync("/readings");
        await page.GetByLabel("For print condition").SelectOptionAsync("short-belt-boards");
        await page.GetByLabel("To", new() { Exact = true }).SelectOptionAsync("Verify");
        await page.GetByRole(AriaRole.Button, new() { Name = "Make the chart" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Link, new() { Name = "short-belt-boards-verify-1.pdf" })).ToBeVisibleAsync();
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_profile_with_limits_that_leave_nothing_is_refused_on_the_page()
    {
        IPage page = await fixture.OpenAsync("/conditions/long-belt-boards");
        await page.GetByLabel("Total ink, %").FillAsync("20");
        await page.GetByRole(AriaRole.Button, new() { Name = "Make the profile" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("20 %");
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Readings_of_white_steps_become_optics_and_the_page_shows_them()
    {
        byte[] text = new Laydown.Intake.Colour.ColourFiles().ReadingsText(Laydown.Demo.Profiles.DemoOptics.Readings(7));
        await File.WriteAllBytesAsync(Path.Combine(fixture.Shop.Folder, "catalogue", "readings", "white-steps.txt"), text);
        IPage page = await fixture.OpenAsync("/conditions/long-belt-clear-sheets/optics");
        await Assertions.Expect(page.GetByText("Generic class in use for")).ToBeVisibleAsync();
        await page.GetByLabel("Readings that say their backing").SelectOptionAsync("white-steps.txt");
        await page.GetByRole(AriaRole.Button, new() { Name = "Fit the optics" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Img, new() { Name = "Scatter of the white: S·X against Wavelength, nm. Values in the table below." })).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await Assertions.Expect(page.GetByRole(AriaRole.Region, new() { Name = "Readings by their way" }).GetByRole(AriaRole.Row)).ToHaveCountAsync(4);
        await Assertions.Expect(page.GetByText("Generic class in use for")).ToHaveCountAsync(0);
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_fit_without_readings_is_refused_on_the_page()
    {
        IPage page = await fixture.OpenAsync("/conditions/short-belt-boards/optics");
        await page.GetByRole(AriaRole.Button, new() { Name = "Fit the optics" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("none chosen");
        await page.Context.CloseAsync();
    }
}
