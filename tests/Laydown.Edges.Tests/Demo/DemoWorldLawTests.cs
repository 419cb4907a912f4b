using System.Security.Cryptography;
using Laydown.Demo;
using Laydown.Demo.Descriptions;
using Laydown.Formats.Json;
using Laydown.Intake.Orders;
using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Press.Inks;
using Laydown.Press.Machines;
using Xunit;

namespace Laydown.Edges.Tests.Demo;

public sealed class DemoWorldLawTests(DemoShop shop) : IClassFixture<DemoShop>
{
    [Fact]
    public void Two_runs_give_the_same_bytes()
    {
        string again = Path.Combine(shop.Folder, "again");
        DemoWorld.WithoutProfiles(again, DemoWorld.Day, CancellationToken.None);
        foreach (string part in (string[])["catalogue", "orders"])
        {
            string[] files = Names(Path.Combine(shop.Folder, part));
            Assert.Equal(files, Names(Path.Combine(again, part)));
            Assert.All(files, f => Assert.Equal(Hash(Path.Combine(shop.Folder, part, f)), Hash(Path.Combine(again, part, f))));
        }
    }

    [Fact]
    public void The_orders_take_less_than_60_megabytes_and_nothing_half_written_is_left()
    {
        FileInfo[] files = new DirectoryInfo(shop.Folder).GetFiles("*", SearchOption.AllDirectories);
        Assert.DoesNotContain(files, f => f.Name.EndsWith(".part", StringComparison.Ordinal));
        Assert.True(files.Where(f => f.FullName.StartsWith(shop.Orders, StringComparison.Ordinal)).Sum(f => f.Length) < 60_000_000);
    }

    [Fact]
    public void Seven_orders_are_taken_and_all_their_artwork_is_there()
    {
        string[] folders = Directory.GetDirectories(shop.Orders);
        Assert.Equal(7, folders.Length);
        foreach (string folder in folders)
        {
            Reading<Order> order = new OrderReader().Read(Path.Combine(folder, "order.json"));
            Assert.Empty(order.Faults);
            Assert.All(order.Value.Items, i => Assert.True(File.Exists(Path.Combine(folder, i.Artwork)), i.Artwork));
            Assert.All(order.Value.Items, i => Assert.True(i.Due > DemoWorld.Day && order.Value.Received < DemoWorld.Day));
            Assert.All(order.Value.Items, i => Assert.Contains(DemoStocks.All(), s => s.Id == i.StockId));
            Assert.Contains("invented", order.Value.Customer, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Every_mode_of_both_presses_covers_every_row_and_fires_in_time()
    {
        Assert.Empty(PressCheck.Of(DemoHybridPress.Describe(), "long-belt.json"));
        Assert.Empty(PressCheck.Of(DemoPlainPress.Describe(), "short-belt.json"));
    }

    /// <summary>41 boards of 1220 × 2440 mm in an hour: common practice, no source; 5 % either way.</summary>
    [Fact]
    public void The_poster_draft_prints_about_41_boards_in_an_hour()
    {
        PressDescription press = DemoHybridPress.Describe();
        Figure boards = Throughput.BoardsPerHour(press, press.FindMode("poster-draft")!, new SizeMm(2440, 1220), 1).Value;
        Assert.InRange(boards.Value, 41 * 0.95, 41 * 1.05);
    }

    /// <summary>720 × 720 dots to the square inch of 14 pl each: (720 / 0.0254)² × 14 pl.</summary>
    [Fact]
    public void The_fine_mode_lays_11_25_ml_on_a_square_metre() =>
        Assert.Equal(11.249, InkVolume.FullMlPerM2(DemoHybridPress.Describe().FindMode("fine")!), tolerance: 0.01);

    [Fact]
    public void The_hybrid_press_is_as_wide_and_as_rich_as_it_must_be()
    {
        PressDescription press = DemoHybridPress.Describe();
        Assert.Equal((2600, 6, 4, 9, 7, 6, 2), ((int)press.BeltWidthMm, press.Zones.Count, press.MaxLanes, press.Channels.Count, press.MaxLayers, press.Modes.Count, press.Rolls.Count));
        Assert.Equal(press.Zones.Count, press.Zones.Select(z => z.WidthMm).Distinct().Count() + 1);
        Assert.Equal(2600, press.Zones.Sum(z => z.WidthMm));
    }

    [Fact]
    public void A_press_written_by_the_generator_is_read_back_the_same()
    {
        byte[] bytes = LaydownJson.ToBytes(DemoHybridPress.Describe());
        Assert.Equal(bytes, LaydownJson.ToBytes(LaydownJson.Read<PressDescription>("long-belt.json", new MemoryStream(bytes)).Value));
    }

    private static string[] Names(string folder) =>
        [.. Directory.GetFiles(folder, "*", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(folder, f)).Order(StringComparer.Ordinal)];

    private static string Hash(string path) => Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(path)));
}
