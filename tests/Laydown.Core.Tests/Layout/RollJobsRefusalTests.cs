using Laydown.Layout.Jobs;
using Laydown.Layout.Sheets;

namespace Laydown.Core.Tests.Layout;

/// <summary>Jobs on rolls and belts that cannot be are refused by the field that is wrong.</summary>
public sealed class RollJobsRefusalTests
{
    private static readonly JobPiece Plain = new("a", 3, 400, 300, null, null);
    private static readonly JobStock Roll = new("r", JobStockKind.Roll, 1200, 50_000, null), Board = new("b", JobStockKind.Board, 1220, 2440, null);
    private static readonly JobBelt Belt = new(2000, 3000, [0, 500, 1000], 2, [new("A", 0, 1000), new("B", 1000, 1000)]);

    public static TheoryData<string, LayoutJob> Jobs() => new()
    {
        { "/stocks", new(null, [Plain], [], new()) },
        { "/stocks", new(null, [Plain], [Roll], new(), Belt) },
        { "/rules/rollsSideBySide", new(null, [Plain], [Board], new(RollsSideBySide: 2)) },
        { "/rules/rollsSideBySide", new(null, [Plain], [Roll], new(RollsSideBySide: 3)) },
        { "/rules/acrossMm", new(null, [Plain], [Roll], new(RollsSideBySide: 2, AcrossMm: 2399)) },
        { "/rules/acrossMm", new(null, [Plain], [Roll], new(AcrossMm: 1199)) },
        { "/rules/longestSectionMm", new(null, [Plain], [Roll], new(LeastSectionMm: 500, LongestSectionMm: 400)) },
        { "/rules/leastSectionMm", new(null, [Plain], [Board], new(LeastSectionMm: 500)) },
        { "/pieces/0/stockId", new(null, [Plain with { StockId = "other" }], [Roll], new()) },
        { "/pieces/0/stockId", new(null, [Plain with { StockId = "b" }], [Board], new()) },
        { "/stocks/0/pricePerMetre", new(null, [Plain], [Roll with { Price = 2, PricePerMetre = 3 }], new()) },
        { "/stocks/0/pricePerMetre", new(null, [Plain], [Board with { PricePerMetre = 3 }], new()) },
        { "/stocks/0/heightMm", new(null, [Plain], [Roll with { HeightMm = 500 }], new(LeadInMm: 300, LeadOutMm: 300)) },
        { "/belt/laysMm/1", new(null, [Plain], [], new(), Belt with { LaysMm = [500, 0] }) },
        { "/belt/laysMm", new(null, [Plain], [], new(), Belt with { LaysMm = [] }) },
        { "/belt/pinsMm/0", new(null, [Plain], [], new(), Belt with { PinsMm = [2500] }) },
        { "/belt/zones, B", new(null, [Plain], [], new(), Belt with { Zones = [new("A", 0, 1100), new("B", 1000, 1000)] }) },
        { "/belt/zones", new(null, [Plain], [], new(), Belt with { Zones = [new("A", 0, 900), new("A", 1000, 1000)] }) },
        { "/pieces", new(null, [.. Enumerable.Range(0, 9).Select(i => Plain with { Id = Invariant($"p{i}") })], [], new(), Belt) },
    };

    [Theory, MemberData(nameof(Jobs))]
    public void Every_fault_names_its_field(string field, LayoutJob job) => Assert.Contains(JobDemands.Faults(job), f => f.Field == field && f.Found.Length > 0 && f.Wanted.Length > 0);

    [Fact]
    public void Blanks_that_no_lay_takes_are_told_without_a_place_and_why()
    {
        JobLayout layout = JobSolver.Solve(new(null, [Plain with { WidthMm = 2100, HeightMm = 2050 }], [], new(), Belt), new(1, 1), null, default);
        Assert.Null(layout.Lanes);
        Assert.Equal(3, Assert.Single(layout.Unplaced).Copies);
        Assert.Contains("2000 mm across", layout.Unplaced[0].Wanted, StringComparison.Ordinal);
        Assert.Empty(JobChecks.Faults(layout));
    }

    [Fact]
    public void The_plain_roll_and_the_plain_belt_are_sound()
    {
        Assert.Empty(JobDemands.Faults(new(null, [Plain], [Roll], new(RollsSideBySide: 2, AcrossMm: 2400))));
        Assert.Empty(JobDemands.Faults(new(null, [Plain], [], new(), Belt)));
    }
}
