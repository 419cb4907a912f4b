using Laydown.Layout.Jobs;
using Laydown.Layout.Sheets;

namespace Laydown.Core.Tests.Layout;

/// <summary>Jobs on rolls and on belts: what comes out keeps the rules, and the checks find whatever is changed for the worse.</summary>
public sealed class RollJobsLawTests
{
    private static readonly JobRules Rules = new(2, 4, CutProcess.Guillotine, LeadInMm: 100, LeadOutMm: 60);

    private static JobPiece Piece(string id, double w, double h, int quantity, string? stock = null) => new(id, quantity, w, h, null, null, StockId: stock);

    private static JobStock Roll(string id, double width, double length = 50_000, int? copies = null, double perMetre = 1) =>
        new(id, JobStockKind.Roll, width, length, copies, EdgeMarginMm: 5, PricePerMetre: perMetre);

    private static LayoutJob Pair(CutProcess process = CutProcess.Guillotine) => new(
        "pair", [Piece("a", 400, 300, 14), Piece("b", 250, 200, 20, "mesh"), Piece("c", 610, 150, 6, "film")], [Roll("film", 1200), Roll("mesh", 900)],
        Rules with { Process = process, RollsSideBySide = 2, CentreGapMm = 40, AcrossMm = 2200, LeastSectionMm = 250, LongestSectionMm = 1500, PricePerMetre = 0.5 });

    private static readonly JobBelt Belt = new(
        2600, 3200, [20, 330, 670, 880, 1090, 1400, 1700, 1950, 2200], 4, [new("A", 0, 310), new("B", 310, 340), new("C", 650, 420), new("D", 1070, 610), new("E", 1680, 500), new("F", 2180, 420)],
        [.. Enumerable.Range(0, 53).Select(i => 50.0 * i)], Side: LoadSide.Origin, MetresPerHour: 20, LoadSeconds: 15);

    private static LayoutJob Lanes => new("lanes", [Piece("large", 480, 640, 10), Piece("small", 300, 400, 24)], [], new(), Belt);

    private static JobLayout Solved(LayoutJob job, long iterations = 400) => JobSolver.Solve(job, new(1, iterations), null, default);

    [Theory]
    [InlineData(CutProcess.Free)]
    [InlineData(CutProcess.Guillotine)]
    public void Two_rolls_side_by_side_are_as_long_as_each_other_and_their_price_holds_both_and_one_advance(CutProcess process)
    {
        JobLayout layout = Solved(Pair(process));
        Assert.Empty(layout.Unplaced);
        Assert.Empty(JobChecks.Faults(layout));
        Assert.Equal(["film", "mesh"], layout.Sheets.Select(s => s.StockId).Order(StringComparer.Ordinal));
        double metres = layout.Sheets[0].Size.HeightMm / 1000;
        Assert.Equal(metres * (1 + 1 + 0.5), layout.Cost, 9);
        Assert.Equal([0.0, layout.Sheets[0].Size.WidthMm + 40], layout.Sheets.Select(s => s.StartMm!.Value));
    }

    [Fact]
    public void What_finds_no_length_left_goes_onto_the_next_roll()
    {
        LayoutJob job = new(null, [Piece("a", 900, 500, 10)], [Roll("end", 1000, 2200, 1, 0.5), Roll("new", 1000)], Rules);
        JobLayout layout = Solved(job);
        Assert.Empty(JobChecks.Faults(layout));
        Assert.Empty(layout.Unplaced);
        Assert.Equal("new", Assert.Single(layout.Sheets).StockId);

        // Only what two ends hold is laid out; the rest is told.
        JobLayout ends = Solved(job with { Stocks = [Roll("end", 1000, 2200, 2)] });
        Assert.Empty(JobChecks.Faults(ends));
        Assert.Equal(2, ends.Sheets.Count);
        Assert.Equal(10 - ends.Sheets.Sum(s => s.Spots.Count), Assert.Single(ends.Unplaced).Copies);
        Assert.Equal(Enumerable.Range(1, ends.Sheets.Sum(s => s.Spots.Count)), ends.Sheets.SelectMany(s => s.Spots).Select(s => s.Copy));
    }

    [Fact]
    public void The_width_that_costs_least_by_the_metre_is_taken()
    {
        LayoutJob job = new(null, [Piece("a", 590, 500, 10)], [Roll("wide", 1250, perMetre: 3), Roll("narrow", 620, perMetre: 1.4)], Rules);
        Assert.Equal("narrow", Solved(job).Sheets[0].StockId);
        Assert.Equal("wide", Solved(job with { Rules = Rules with { PricePerMetre = 2 } }).Sheets[0].StockId);
    }

    public static TheoryData<string, Func<JobLayout, JobLayout>> Worse() => new()
    {
        { "longer than beside it", l => Changed(l, 0, s => s with { Size = new(s.Size.WidthMm, s.Size.HeightMm + 1) }) },
        { "too near the left roll", l => Changed(l, 1, s => s with { StartMm = s.StartMm - 1 }) },
        { "alone", l => Changed(l, 1, s => s with { StartMm = null }) },
        { "a cut through a piece", l => Changed(l, 0, s => s with { CutsAcrossMm = [s.Spots[0].YMm + 5, .. s.CutsAcrossMm!] }) },
        { "a section too long", l => Changed(l, 0, s => s with { CutsAcrossMm = [] }) },
        { "a piece on the other roll's media", l => Swapped(l) },
        { "over the lead-in", l => Changed(l, 0, s => s with { Spots = [s.Spots[0] with { YMm = 99 }, .. s.Spots.Skip(1)] }) },
    };

    [Theory, MemberData(nameof(Worse))]
    public void The_checks_find_every_change_of_a_pair_for_the_worse(string what, Func<JobLayout, JobLayout> change)
    {
        JobLayout sound = Solved(Pair(), 300);
        Assert.Empty(JobChecks.Faults(sound));
        Assert.True(JobChecks.Faults(change(sound)).Count > 0, what);
    }

    [Fact]
    public void Blanks_of_two_sizes_lie_in_lanes_that_keep_every_rule_of_the_belt()
    {
        JobLayout layout = Solved(Lanes);
        Assert.Empty(layout.Unplaced);
        Assert.Empty(JobChecks.Faults(layout));
        JobLanes lanes = layout.Lanes!;
        Assert.Equal([10, 24], lanes.Place.Lanes.GroupBy(l => l.BlankId).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => g.Sum(l => l.Blanks)));

        // 34 blanks of 15 s each take 8.5 minutes to lay; printing the longest lane at 20 m an hour takes longer.
        Assert.Equal(34 / Math.Max(lanes.FeedMm / 1000 / 20, 34 * 15 / 3600.0), lanes.PiecesPerHour!.Value, 9);
    }

    public static TheoryData<string, Func<BeltPlace, BeltPlace>> WorseLanes() => new()
    {
        { "off the lays", p => First(p, l => l with { StartMm = l.StartMm + 3 }) },
        { "a zone shut under a blank", p => p with { OpenZones = [.. p.OpenZones.Skip(1)], ShutZones = [p.OpenZones[0], .. p.ShutZones] } },
        { "a zone left out", p => p with { OpenZones = [.. p.OpenZones.Skip(1)] } },
        { "wider than its blank", p => First(p, l => l with { WidthMm = l.WidthMm + 10 }) },
        { "one blank fewer", p => First(p, l => l with { Blanks = l.Blanks - 1 }) },
        { "loaded near first from the origin's side", p => p with { Lanes = [.. p.Lanes.Select(l => l with { Loaded = l.Number })] } },
        { "two lanes over each other", p => p with { Lanes = [p.Lanes[0], .. p.Lanes.Skip(1).Select(l => l with { StartMm = p.Lanes[0].StartMm })] } },
        { "open vacuum untold", p => p with { UncoveredMm = p.UncoveredMm + 5 } },
    };

    [Theory, MemberData(nameof(WorseLanes))]
    public void The_checks_find_every_change_of_lanes_for_the_worse(string what, Func<BeltPlace, BeltPlace> change)
    {
        JobLayout sound = Solved(Lanes);
        Assert.True(JobChecks.Faults(sound with { Lanes = sound.Lanes! with { Place = change(sound.Lanes.Place) } }).Count > 0, what);
        Assert.True(JobChecks.Faults(sound with { Lanes = sound.Lanes with { PiecesPerHour = 1 } }).Count > 0, "pieces an hour");
    }

    private static JobLayout Changed(JobLayout layout, int number, Func<JobSheet, JobSheet> change) =>
        layout with { Sheets = [.. layout.Sheets.Select((s, i) => i == number ? change(s) : s)] };

    private static BeltPlace First(BeltPlace place, Func<Lane, Lane> change) => place with { Lanes = [change(place.Lanes[0]), .. place.Lanes.Skip(1)] };

    private static JobLayout Swapped(JobLayout layout) => layout with
    {
        Job = layout.Job with { Pieces = [.. layout.Job.Pieces.Select(p => p.StockId is null ? p : p with { StockId = p.StockId == "film" ? "mesh" : "film" })] },
    };
}
