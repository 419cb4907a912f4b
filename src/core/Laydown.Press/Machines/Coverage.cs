using System.Numerics;
using Laydown.Measures;

namespace Laydown.Press.Machines;

/// <summary>Whether a mode prints every row of the sheet as often as it says: the coverage invariant.</summary>
/// <remarks>
/// With a constant feed of F rows, nozzles S rows apart and J of them in use, every row is met exactly P times
/// if and only if gcd(F, S) = 1 and J = P · F. Derived here; <see cref="Simulate"/> counts the same by brute force and both must agree.
/// </remarks>
public static class Coverage
{
    /// <summary>Checks <paramref name="mode"/> on <paramref name="channel"/> with the head whole.</summary>
    /// <returns>The walk of the nozzles, or faults that name the first row missed or met too often.</returns>
    public static Reading<CoveragePlan> Check(Mode mode, Channel channel) => Check(mode, channel, "press.json", "/modes");

    /// <summary>As above, with faults that name <paramref name="file"/> and the JSON path of the mode.</summary>
    public static Reading<CoveragePlan> Check(Mode mode, Channel channel, string file, string path)
    {
        if (mode.Passes < 1 || mode.FeedRows < 1 || mode.NozzlesUsed < 1)
            return Refused("passes", Invariant($"{mode.Passes} passes, {mode.FeedRows} rows, {mode.NozzlesUsed} nozzles"), "each at least 1");
        if (mode.NozzlesUsed > channel.Nozzles)
            return Refused("nozzlesUsed", Invariant($"{mode.NozzlesUsed}"), Invariant($"at most the {channel.Nozzles} nozzles of channel {channel.Id}"));
        if (channel.NozzlesPerInch < 1 || mode.FeedDpi % channel.NozzlesPerInch != 0)
            return Refused("feedDpi", Invariant($"{mode.FeedDpi} dpi"), Invariant($"a whole multiple of the {channel.NozzlesPerInch} nozzles per inch of channel {channel.Id}"));

        int rows = mode.FeedDpi / channel.NozzlesPerInch;
        RowVisits seen = Simulate(mode.NozzlesUsed, rows, mode.FeedRows, mode.Passes);
        bool holds = Holds(mode.NozzlesUsed, rows, mode.FeedRows, mode.Passes);
        if (holds != (seen.FirstWrongRow is null))
            throw new InvalidOperationException(Invariant($"Mode {mode.Id}: invariant and simulation disagree."));

        return holds
            ? Reading.Of(new CoveragePlan(mode.NozzlesUsed, rows, mode.FeedRows, mode.Passes, 1))
            : Refused("feedRows", FoundIn(seen, mode.FeedRows), WantedFor(mode, rows, channel));

        Reading<CoveragePlan> Refused(string field, string found, string wanted) =>
            Reading.Refused<CoveragePlan>(new InputFault(file, null, Invariant($"{path}/{field} ({mode.Id})"), found, wanted));
    }

    /// <summary>The head split into <paramref name="layers"/> blocks along the feed, one layer each: the largest feed that still covers every row.</summary>
    /// <returns>The walk of one block, or a fault when a block has too few nozzles for the passes.</returns>
    public static Reading<CoveragePlan> Split(Mode mode, Channel channel, int layers)
    {
        Bounds.Within(layers, 1, 99);
        return Check(mode, channel).Then(whole =>
        {
            int feed = mode.FeedRows / layers;
            while (feed > 0 && BigInteger.GreatestCommonDivisor(feed, whole.RowsBetweenNozzles) != 1)
                feed--;
            return feed > 0
                ? Reading.Of(whole with { Nozzles = mode.Passes * feed, FeedRows = feed, Blocks = layers })
                : Reading.Refused<CoveragePlan>(new InputFault("press.json", null, Invariant($"/modes ({mode.Id})"),
                    Invariant($"{mode.NozzlesUsed} nozzles for {layers} layers of {mode.Passes} passes"),
                    Invariant($"at least {layers * mode.Passes} nozzles, or fewer layers in one go")));
        });
    }

    /// <summary>The invariant itself.</summary>
    /// <param name="nozzles">J, at least 1.</param>
    /// <param name="rowsBetweenNozzles">S, at least 1.</param>
    /// <param name="feedRows">F, at least 1.</param>
    /// <param name="passes">P, at least 1.</param>
    public static bool Holds(int nozzles, int rowsBetweenNozzles, int feedRows, int passes) =>
        BigInteger.GreatestCommonDivisor(feedRows, rowsBetweenNozzles) == 1 && nozzles == (long)passes * feedRows;

    /// <summary>Counts by brute force how often each row of one feed step is met once all nozzles have come in.</summary>
    /// <remarks>Scan n puts nozzle j on row n·F + j·S. Rows from (J − 1)·S on have been passed by every nozzle, and they repeat every F rows.</remarks>
    public static RowVisits Simulate(int nozzles, int rowsBetweenNozzles, int feedRows, int wantedPasses)
    {
        Bounds.Within(nozzles, 1, 100_000);
        Bounds.Within(rowsBetweenNozzles, 1, 1000);
        Bounds.Within(feedRows, 1, 100_000);
        int first = (nozzles - 1) * rowsBetweenNozzles;
        int[] visits = new int[feedRows];
        for (int scan = 0; scan * feedRows < first + feedRows; scan++)
        {
            // Only nozzles that stand in the window of one feed step are counted.
            int top = scan * feedRows;
            int from = Math.Max(0, (first - top + rowsBetweenNozzles - 1) / rowsBetweenNozzles);
            for (int nozzle = from; nozzle < nozzles && top + (nozzle * rowsBetweenNozzles) < first + feedRows; nozzle++)
                visits[top + (nozzle * rowsBetweenNozzles) - first]++;
        }

        // A row met too seldom is named before one met too often: that is the one the eye finds.
        int wrong = Array.FindIndex(visits, v => v < wantedPasses);
        if (wrong < 0)
            wrong = Array.FindIndex(visits, v => v > wantedPasses);
        return new RowVisits(visits.Min(), visits.Max(), wrong < 0 ? null : wrong, wrong < 0 ? wantedPasses : visits[wrong]);
    }

    private static string FoundIn(RowVisits seen, int feedRows) =>
        Invariant($"row {seen.FirstWrongRow + 1} of every {feedRows} is ") +
        (seen.VisitsThere == 0 ? "missed" : Invariant($"met {seen.VisitsThere} times")) +
        Invariant($"; rows are met {seen.Fewest} to {seen.Most} times");

    private static string WantedFor(Mode mode, int rows, Channel channel) =>
        Invariant($"every row met {mode.Passes} times: feed rows without a common divisor with {rows} ") +
        Invariant($"({mode.FeedDpi} dpi over {channel.NozzlesPerInch} nozzles per inch), and nozzles used = passes × feed rows ") +
        Invariant($"(here {mode.Passes} × {mode.FeedRows} = {mode.Passes * mode.FeedRows}, found {mode.NozzlesUsed})");
}
