using System.Text;
using System.Text.Json.Nodes;
using Laydown.Demo.Descriptions;
using Laydown.Intake.Orders;
using Laydown.Measures;
using Xunit;

namespace Laydown.Edges.Tests.Orders;

public sealed class CatalogueRefusalTests : IDisposable
{
    private readonly string folder = Path.Combine(Path.GetTempPath(), "laydown-catalogue-" + Guid.NewGuid().ToString("N"));

    public CatalogueRefusalTests()
    {
        DemoCatalogue.Write(folder, CancellationToken.None);
        Directory.CreateDirectory(Path.Combine(folder, "profiles"));

        // The reader looks whether a profile is there; what is in it is another reader's task.
        foreach (string profile in DemoCatalogue.Profiles)
            File.WriteAllBytes(Path.Combine(folder, "profiles", profile), [0]);
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void The_demo_catalogue_is_taken()
    {
        Reading<Laydown.Shop.Orders.Catalogue> reading = new CatalogueReader().Read(folder);
        Assert.Empty(reading.Faults);
        Assert.Equal((2, 2), (reading.Value.Presses.Count, reading.Value.InkSets.Count));
        Assert.True(reading.Value.Stocks.Count >= 12);
        Assert.All(reading.Value.Presses, p => Assert.True(p.Invented));
        Assert.All(reading.Value.Stocks, s => Assert.Contains(reading.Value.Conditions, c => c.StockIds.Contains(s.Id)));
    }

    [Theory]
    [InlineData("presses/long-belt.json", "/zones/1/startMm", "200")]
    [InlineData("presses/long-belt.json", "/zones/5/widthMm", "900")]
    [InlineData("presses/long-belt.json", "/channels/8/tankId", "\"VARNISH\"")]
    [InlineData("presses/long-belt.json", "/channels/8/id", "\"C\"")]
    [InlineData("presses/long-belt.json", "/modes/3/contonePpi", "200")]
    [InlineData("presses/long-belt.json", "/modes/3/feedRows", "360")]
    [InlineData("presses/long-belt.json", "/modes/3/nozzlesUsed", "721")]
    [InlineData("presses/long-belt.json", "/modes/0/speedMPerS", "1.5")]
    [InlineData("presses/long-belt.json", "/modes/2/dropsPl", "[7, 7]")]
    [InlineData("presses/long-belt.json", "/modes", "[]")]
    [InlineData("presses/long-belt.json", "/lays/3", "100")]
    [InlineData("presses/long-belt.json", "/rolls/1/startMm", "1800")]
    [InlineData("presses/long-belt.json", "/tanks/0/levelMl", "99999")]
    [InlineData("presses/long-belt.json", "/beltWidthMm", "-2600")]
    [InlineData("conditions/long-belt-rolls.json", "/pressId", "\"no-belt\"")]
    [InlineData("conditions/long-belt-rolls.json", "/inkSetId", "\"no-inks\"")]
    [InlineData("conditions/long-belt-rolls.json", "/inkSetId", "\"five-inks\"")]
    [InlineData("conditions/long-belt-rolls.json", "/modeIds/1", "\"no-mode\"")]
    [InlineData("conditions/long-belt-rolls.json", "/stockIds/2", "\"no-stock\"")]
    [InlineData("conditions/long-belt-rolls.json", "/profile", "\"no-profile.icc\"")]
    [InlineData("conditions/long-belt-rolls.json", "/profile", "\"../shop.json\"")]
    [InlineData("conditions/long-belt-rolls.json", "/inks/0/curve", "[0, 50, 40, 100]")]
    [InlineData("conditions/long-belt-rolls.json", "/inks/1/role", "\"cyan\"")]
    [InlineData("inks/eight-inks.json", "/inks/1/role", "\"cyan\"")]
    [InlineData("stocks/mesh-roll.json", "/id", "\"banner-roll\"")]
    [InlineData("stocks/mesh-roll.json", "/kind", "\"sheet\"")]
    [InlineData("shop.json", "/rates/marginPercent", "100")]
    [InlineData("shop.json", "/address", "\"javascript:alert(1)\"")]
    [InlineData("shop.json", "/rates/overheads", "[{\"name\": \"rent\", \"on\": \"pressHours\", \"perYear\": {\"cents\": 1}, \"basePerYear\": 0, \"variablePerUnit\": {\"cents\": 0}}]", "/rates/overheads/0/basePerYear")]
    [InlineData("shop.json", "/rates/overheads", "[{\"name\": \"rent\", \"on\": \"pressHours\", \"perYear\": {\"cents\": -1}, \"basePerYear\": 1, \"variablePerUnit\": {\"cents\": 0}}]", "/rates/overheads/0/perYear/cents")]
    [InlineData("shop.json", "/rates/overheads", "[{\"name\": \"a\", \"on\": \"cost\", \"perYear\": {\"cents\": 1}, \"basePerYear\": 1}, {\"name\": \"a\", \"on\": \"cost\", \"perYear\": {\"cents\": 1}, \"basePerYear\": 1}]", "/rates/overheads/1/name")]
    [InlineData("shop.json", "/rates/finishingRates/1/kind", "\"cutSquare\"")]
    [InlineData("shop.json", "/rates/finishingRates/0/minutesFirst", "-1")]
    [InlineData("shop.json", "/rates/finishingRates/0/minutesPerUnit", "-0.1")]
    [InlineData("shop.json", "/rates/policy", "{\"roundToCents\": 0}", "/rates/policy/roundToCents")]
    [InlineData("shop.json", "/rates/policy", "{\"offcutCreditPercent\": 101}", "/rates/policy/offcutCreditPercent")]
    [InlineData("shop.json", "/rates/policy", "{\"smallestNet\": {\"cents\": -5}}", "/rates/policy/smallestNet/cents")]
    [InlineData("calendar.json", "/timeZone", "\"Europe/Saltmarsh\"")]
    [InlineData("calendar.json", "/shifts", "[]")]
    [InlineData("calendar.json", "/shifts/0/end", "\"05:00\"")]
    [InlineData("calendar.json", "/shifts/0/end", "\"14:30\"", "/shifts/1")]
    [InlineData("calendar.json", "/shifts/0/start", "\"25:00\"")]
    [InlineData("calendar.json", "/shifts/0/crew", "-1")]
    [InlineData("calendar.json", "/shifts/1/pressIds/0", "\"no-press\"", "/shifts/1/pressIds")]
    [InlineData("calendar.json", "/holidays/1/first", "\"2026-12-28\"", "/holidays/1")]
    [InlineData("calendar.json", "/holidays/0/first", "\"2026-02-30\"")]
    [InlineData("calendar.json", "/extra/0/day", "\"2026-12-04\"", "/extra/0")]
    public void A_contradiction_is_named_with_file_and_path(string file, string path, string value, string? told = null)
    {
        Change(file, path, JsonNode.Parse(value));
        IReadOnlyList<InputFault> faults = new CatalogueReader().Read(folder).Faults;
        Assert.Contains(faults, f => f.File == Path.GetFileName(file) && f.Field == (told ?? path));
    }

    [Fact]
    public void A_shop_without_a_calendar_is_taken_without_one()
    {
        File.Delete(Path.Combine(folder, "calendar.json"));
        Assert.Null(new CatalogueReader().Read(folder).Value.Calendar);
    }

    [Fact]
    public void Times_of_a_calendar_may_be_written_without_seconds()
    {
        Change("calendar.json", "/shifts/0/start", JsonValue.Create("05:30"));
        Assert.Equal(new TimeOnly(5, 30), new CatalogueReader().Read(folder).Value.Calendar!.Shifts[0].Start);
    }

    [Fact]
    public void A_file_cut_short_is_named_and_the_others_are_still_read()
    {
        string path = Path.Combine(folder, "stocks", "mesh-roll.json");
        File.WriteAllBytes(path, File.ReadAllBytes(path)[..100]);
        Change("inks/five-inks.json", "/inks/0/densityGPerMl", -1);
        IReadOnlyList<InputFault> faults = new CatalogueReader().Read(folder).Faults;
        Assert.Contains(faults, f => f.File == "mesh-roll.json");
        Assert.Contains(faults, f => f.File == "five-inks.json" && f.Field == "/inks/0/densityGPerMl");
    }

    [Fact]
    public void An_empty_folder_says_what_is_missing()
    {
        string empty = Path.Combine(folder, "nothing");
        Directory.CreateDirectory(empty);
        IReadOnlyList<InputFault> faults = new CatalogueReader().Read(empty).Faults;
        Assert.Equal(["shop.json", "presses", "inks", "stocks", "conditions"], faults.Select(f => f.File));
    }

    private void Change(string file, string path, JsonNode? value)
    {
        string full = Path.Combine(folder, file);
        JsonNode root = JsonNode.Parse(File.ReadAllBytes(full))!;
        string[] steps = path.Split('/')[1..];
        JsonNode at = root;
        foreach (string step in steps[..^1])
            at = at is JsonArray list ? list[int.Parse(step, System.Globalization.CultureInfo.InvariantCulture)]! : at[step]!;
        if (at is JsonArray last)
            last[int.Parse(steps[^1], System.Globalization.CultureInfo.InvariantCulture)] = value;
        else
            at[steps[^1]] = value;
        File.WriteAllBytes(full, Encoding.UTF8.GetBytes(root.ToJsonString()));
    }
}
