using Laydown.Demo.Descriptions;
using Laydown.Edges.Tests.Store;
using Laydown.Measures;
using Laydown.Plan.Log;
using Laydown.Press.Machines;
using Laydown.Shop.Log;
using Laydown.Shop.Orders;
using Laydown.Store;

namespace Laydown.Edges.Tests.UseCases;

/// <summary>Logs from before overlaps were refused: what two runs tell of one press is counted once, and told.</summary>
public sealed class ReviewOverlapsLawTests : IDisposable
{
    private static readonly CancellationToken None = CancellationToken.None;
    private static readonly PressDescription Press = DemoPlainPress.Describe();
    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task Availability_of_an_old_log_never_passes_the_open_time_and_the_overlap_is_told()
    {
        string file = Path.Combine(folder.Path, "shop.db");
        await new SqliteShopStore(file).OpenAsync(None);
        SqliteLogStore log = new(file);
        Catalogue catalogue = new("Shop", "", [Press], [], [], [], new("EUR", default, 0, 0, 0, 0, [], 30))
        {
            Calendar = new("Europe/Vienna", [new("day", [DayOfWeek.Thursday], new(8, 0), new(10, 0))], [], []),
        };

        // R-1 pauses while R-2 prints, which is as it should be; R-3 lies over R-1 and reaches past the shift: 120 minutes of 120 are filled.
        await log.AppendAllAsync(
            [.. Run("R-1", (0, 30), (60, 90)), .. Run("R-2", (30, 60)), .. Run("R-3", (80, 150))], None);
        Reading<ShopReview> review = await new ReviewShop(catalogue, log, TimeProvider.System).ReviewAsync(new(null, At(-60), At(600)), None);
        Figure availability = review.Value.Figures.Single(f => f.Name == "availability");
        Assert.Equal(100, availability.Value, 9);
        Assert.Equal("120 min run of 120 min open; 30 min run while shut are left out; 10 min that two runs tell of one press are counted once", availability.Because);
        RunOverlap overlap = Assert.Single(review.Value.Overlaps);
        Assert.Equal(("R-1", "R-3", 10.0), (overlap.RunId, overlap.OtherRunId, overlap.Minutes));
        Assert.Equal(Invariant($"2026-11-26 09:20 to 09:30, 10 min: R-1 and R-3 on {Press.Id}."), LogWords.Of(overlap));
    }

    private static IEnumerable<LogEntry> Run(string id, params (int From, int To)[] turns)
    {
        foreach ((int i, (int from, int to)) in turns.Index())
        {
            bool done = i == turns.Length - 1;
            yield return new(0, At(from), LogKind.Start, id, Press.Id);
            yield return new LogEntry(0, At(to), LogKind.Stop, id, Press.Id, Stop: new(1, 0, null, done)) with
            {
                Actual = done ? new(id, At(turns[0].From), At(to), 1, 0, Press.Id, "m", "s", new(2026, 11, 26), turns.Sum(t => t.To - t.From), 10, null, 0, 1, 1) : null,
            };
        }
    }

    private static DateTimeOffset At(int minutes) => new DateTimeOffset(2026, 11, 26, 8, 0, 0, TimeSpan.FromHours(1)).AddMinutes(minutes);
}
