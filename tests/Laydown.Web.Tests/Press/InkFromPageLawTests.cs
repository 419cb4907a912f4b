using Laydown.Plan.Upkeep;
using Laydown.Press.Inks;
using Laydown.Shop.Press;
using Laydown.Web.Tests.Browser;
using Microsoft.Playwright;

namespace Laydown.Web.Tests.Press;

/// <summary>Ink is written down, counted and poured from the page of upkeep; set-up sheets tell the new levels.</summary>
public sealed class InkFromPageLawTests(PageFixture fixture) : IClassFixture<PageFixture>
{
    private const string Press = "long-belt";

    [Theory, InlineData(true), InlineData(false)]
    public async Task A_lot_is_written_down_poured_and_stands_in_the_tank(bool scripts)
    {
        string lot = scripts ? "LOT-7" : "LOT-8";
        IPage page = await fixture.OpenAsync($"/upkeep/{Press}", scripts: scripts);
        await page.GetByLabel("C, ml of 2400", new() { Exact = true }).FillAsync("0");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write it down" }).ClickAsync();
        ILocator another = page.Locator("#shelf").GetByRole(AriaRole.Group, new() { Name = "Another lot 1" });
        await another.GetByLabel("Ink", new() { Exact = true }).SelectOptionAsync("Cyan");
        await another.GetByLabel("Lot, as printed on it").FillAsync(lot);
        await another.GetByLabel("There, ml").FillAsync("1500");
        await another.GetByLabel("Last day").FillAsync("2027-03-31");
        await another.GetByLabel("Place").FillAsync("cellar");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write the shelf down" }).ClickAsync();
        InkPack pack = (await PageAsync()).Packs.Single(p => p.Lot == lot);
        Assert.Equal(new InkPack(lot, InkRole.Cyan, 1500, new(2027, 3, 31), "cellar"), pack);

        ILocator pour = page.GetByRole(AriaRole.Form, new() { Name = "Ink poured into a tank" });
        await pour.GetByLabel("Into tank").SelectOptionAsync("C");
        await pour.GetByLabel("From lot").SelectOptionAsync(lot);
        await pour.GetByLabel("Poured, ml").FillAsync("1000");
        await pour.GetByRole(AriaRole.Button).ClickAsync();
        PressCarePage after = await PageAsync();
        Assert.Equal(500, after.Packs.Single(p => p.Lot == lot).Ml);
        TankState tank = after.State.Tanks.Single(t => t.TankId == "C");
        Assert.Equal((1000.0, lot, new DateOnly(2027, 3, 31)), (tank.LevelMl, tank.Lot, tank.Expires));

        // More than the tank takes is refused in words; the shelf stays.
        await pour.GetByLabel("From lot").SelectOptionAsync(lot);
        await pour.GetByLabel("Poured, ml").FillAsync("5000");
        await pour.GetByRole(AriaRole.Button).ClickAsync();
        await Assertions.Expect(page.Locator("#needs")).ToContainTextAsync("on the shelf");
        Assert.Equal(500, (await PageAsync()).Packs.Single(p => p.Lot == lot).Ml);

        // The level that was written down stands on the sheet of a run of that press.
        string run = (await fixture.Shop.Store.RunsAsync(CancellationToken.None)).First(r => r.Run.PressId == Press && r.Run.Inks.Any(i => i.Role == InkRole.Cyan && i.PrintedMl > 0)).Run.Id;
        await page.GotoAsync($"{fixture.Address}/runs/{run}/set-up");
        await Assertions.Expect(page.Locator("#ink").GetByRole(AriaRole.Row).Filter(new() { HasText = "1000.0" })).ToHaveCountAsync(1);

        // 0 ml takes it off the list again.
        await page.GotoAsync($"{fixture.Address}/upkeep/{Press}");
        await page.Locator("#shelf").GetByRole(AriaRole.Group, new() { Name = $"Lot {lot}" }).GetByLabel("There, ml").FillAsync("0");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write the shelf down" }).ClickAsync();
        Assert.DoesNotContain((await PageAsync()).Packs, p => p.Lot == lot);
        await page.Context.CloseAsync();
    }

    private async Task<PressCarePage> PageAsync() => (await fixture.Shop.Services.Press.Book.ReadAsync(Press, CancellationToken.None))!;
}
