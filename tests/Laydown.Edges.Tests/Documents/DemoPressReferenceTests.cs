using Laydown.Measures;
using Laydown.Press.Machines;
using Xunit;

namespace Laydown.Edges.Tests.Documents;

/// <summary>The demo's presses against what the trade knows of such machines.</summary>
public sealed class DemoPressReferenceTests : IDisposable
{
    private readonly Shopfloor floor = new();

    /// <summary>About 41 boards of 4 × 8 ft an hour in a draft: common practice, no source. Boards lie with their long side across the belt.</summary>
    [Fact]
    public void The_draft_mode_prints_41_boards_of_4_by_8_ft_an_hour_within_5_percent()
    {
        PressDescription press = floor.Catalogue.Presses.Single(p => p.Id == "long-belt");
        Figure boards = Throughput.BoardsPerHour(press, press.FindMode("poster-draft")!, new SizeMm(8 * 304.8, 4 * 304.8), 1).Value;
        Assert.InRange(boards.Value, 41 * 0.95, 41 * 1.05);
    }

    [Fact]
    public void Every_mode_of_every_demo_press_covers_every_row_and_fires_in_time() =>
        Assert.All(floor.Catalogue.Presses, p => Assert.Empty(PressCheck.Of(p, p.Id)));

    public void Dispose() => floor.Dispose();
}
