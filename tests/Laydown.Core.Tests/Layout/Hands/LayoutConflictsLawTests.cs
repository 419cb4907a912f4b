using Laydown.Layout.Boards;
using Laydown.Layout.Hands;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Core.Tests.Layout.Hands;

/// <summary>The judge of layouts against the independent checker of this project, on sound and on spoilt sheets.</summary>
public sealed class LayoutConflictsLawTests
{
    private static readonly IReadOnlyList<Piece> Pieces = [new("a", new(300, 200), 3, 3, true), new("b", new(500, 400), 3, 1, false)];
    private static readonly HandRules Rules = new(Pieces, new(1220, 2440), 10, 5, CutProcess.Free);

    public static IEnumerable<TheoryDataRow<int, CutProcess>> Cases() =>
        from seed in Enumerable.Range(1, 20)
        from process in Enum.GetValues<CutProcess>()
        select new TheoryDataRow<int, CutProcess>(seed, process);

    [Theory, MemberData(nameof(Cases))]
    public void Layouts_of_the_search_are_sound_and_spoilt_ones_are_judged_as_the_checker_judges_them(int seed, CutProcess process)
    {
        Random chance = new(seed);
        IReadOnlyList<Piece> pieces = Draw(chance, 2 + chance.Next(8));
        HandRules rules = new(pieces, new(1220, 2440), 10, 4, process);
        LayoutResult made = BoardLayout.Solve(pieces, new(rules.Sheet, 10, 4, process, seed, 5), CancellationToken.None);
        IReadOnlyList<HandSheet> sheets = HandSheets.From(made.Sheets);
        Assert.Empty(LayoutConflicts.Of(sheets, rules));
        for (int i = 0; i < 6; i++)
        {
            // Some steps are harmless, some are not: the two judges must agree on which.
            IReadOnlyList<HandSheet> spoilt = Spoilt(sheets, chance, i);
            bool sound = SheetChecker.Faults(pieces, [.. HandSheets.Layouts(spoilt, rules).Select(s => s with { Offcuts = [] })], 4, process == CutProcess.Guillotine).Count == 0;
            Assert.Equal(sound, LayoutConflicts.Of(spoilt, rules).Count == 0);
        }
    }

    [Theory]
    [InlineData(310, 10, ConflictKind.Overlap, 0)]
    [InlineData(314.9, 10, ConflictKind.Gap, 4.9)]
    [InlineData(10, 214, ConflictKind.Gap, 4)]
    [InlineData(9, 300, ConflictKind.Margin, 9)]
    [InlineData(915, 300, ConflictKind.Margin, 5)]
    [InlineData(-4, 300, ConflictKind.OverEdge, -4)]
    [InlineData(600, 2300, ConflictKind.OverEdge, -60)]
    public void Each_kind_is_told_with_what_was_found(double x, double y, ConflictKind kind, double found)
    {
        // A touching neighbour is too near, not overlapped.
        HandSheet sheet = new(1, [new("a", 10, 10), new("a", x, y)]);
        LayoutConflict one = Assert.Single(LayoutConflicts.OnSheet(sheet, 0, Rules));
        Assert.Equal(kind == ConflictKind.Overlap ? ConflictKind.Gap : kind, one.Kind);
        Assert.Equal(found, one.Found, 6);
        Assert.Equal(Severity.Stop, one.Severity);
    }

    [Fact]
    public void What_two_pieces_share_and_what_lies_between_them_is_drawn()
    {
        LayoutConflict over = LayoutConflicts.OnSheet(new(1, [new("a", 10, 10), new("a", 290, 150)]), 0, Rules)[0];
        Assert.Equal((ConflictKind.Overlap, new RectMm(290, 150, 20, 60)), (over.Kind, over.Where));
        LayoutConflict gap = LayoutConflicts.OnSheet(new(1, [new("a", 10, 10), new("a", 313, 100)]), 0, Rules)[0];
        Assert.Equal((ConflictKind.Gap, new RectMm(310, 100, 3, 110)), (gap.Kind, gap.Where));
    }

    [Fact]
    public void Copies_are_counted_over_all_repeats()
    {
        IReadOnlyList<LayoutConflict> found = LayoutConflicts.Of([new(2, [new("a", 10, 10), new("a", 10, 300)])], Rules);
        Assert.Equal([(ConflictKind.Surplus, "a", 4.0, 3.0), (ConflictKind.Missing, "b", 1.0, 1.0)], found.Select(c => (c.Kind, c.PieceId!, c.Found, c.Wanted)));
    }

    [Fact]
    public void A_turned_piece_that_may_not_turn_is_told() =>
        Assert.Equal(ConflictKind.Turned, Assert.Single(LayoutConflicts.OnSheet(new(1, [new("b", 10, 10, 90)]), 0, Rules)).Kind);

    [Fact]
    public void A_place_kept_free_is_kept_by_the_gap()
    {
        HandRules rules = Rules with { KeepOuts = [new(500, 500, 100, 100)] };
        Assert.Empty(LayoutConflicts.OnSheet(new(1, [new("a", 195, 500)]), 0, rules));
        Assert.Equal(ConflictKind.KeepOut, Assert.Single(LayoutConflicts.OnSheet(new(1, [new("a", 196, 500)]), 0, rules)).Kind);
    }

    [Fact]
    public void A_pinwheel_is_no_work_for_the_saw_and_its_four_arms_are_named()
    {
        IReadOnlyList<Piece> arms = [new("h", new(300, 100), 0, 2, true), new("v", new(100, 300), 0, 2, true)];
        HandRules rules = new(arms, new(1220, 2440), 10, 5, CutProcess.Guillotine);
        HandSheet wheel = new(1, [new("h", 10, 10), new("v", 315, 10), new("h", 115, 315), new("v", 10, 115)]);
        LayoutConflict saw = Assert.Single(LayoutConflicts.OnSheet(wheel, 0, rules));
        Assert.Equal((ConflictKind.Saw, Severity.Warn), (saw.Kind, saw.Severity));
        Assert.Equal([0, 1, 2, 3], saw.Spots.Order());
        Assert.Empty(LayoutConflicts.OnSheet(wheel, 0, rules with { Process = CutProcess.Free }));
    }

    [Fact]
    public void Cuts_run_in_the_middle_of_their_kerf_and_their_stages_are_fewest()
    {
        HandRules rules = Rules with { Process = CutProcess.Guillotine };
        SawCuts cuts = SawCuts.Of(new(1, [new("a", 10, 10), new("a", 315, 10), new("a", 620, 10)]), rules);
        Assert.True(cuts.ComesApart);
        Assert.Equal(2, cuts.Stages);
        Assert.Contains(cuts.Cuts, c => c.From.XMm == 312.5 && c.To.XMm == 312.5);
    }

    [Fact]
    public void On_a_roll_the_lead_is_kept_and_the_sides_have_the_margin()
    {
        HandRules rules = Rules with { Sheet = new(1370, 20_000), IsRoll = true, LeadMm = 150 };
        Assert.Empty(LayoutConflicts.OnSheet(new(1, [new("a", 10, 150)]), 0, rules));
        LayoutConflict lead = Assert.Single(LayoutConflicts.OnSheet(new(1, [new("a", 10, 149)]), 0, rules));
        Assert.Equal((ConflictKind.Margin, 149.0, 150.0), (lead.Kind, lead.Found, lead.Wanted));
        Assert.Equal(500, HandSheets.SizeOf(new(1, [new("a", 10, 150)]), rules).HeightMm);
    }

    internal static IReadOnlyList<Piece> Draw(Random chance, int count) => [.. Enumerable.Range(0, count).Select(i => new Piece(
        Invariant($"p{i}"), new(60 + chance.Next(700), 60 + chance.Next(700)), 3, 1 + chance.Next(5), chance.Next(2) == 0))];

    private static IReadOnlyList<HandSheet> Spoilt(IReadOnlyList<HandSheet> sheets, Random chance, int how)
    {
        int at = chance.Next(sheets.Count), spot = chance.Next(sheets[at].Spots.Count);
        HandSpot was = sheets[at].Spots[spot];
        HandSpot now = how == 5 ? was with { Angle = (was.Angle + 90) % 360 } : was with { XMm = was.XMm + chance.Next(-12, 13), YMm = was.YMm + chance.Next(-12, 13) };
        return [.. sheets.Select((s, i) => i == at ? s with { Spots = [.. s.Spots.Select((p, j) => j == spot ? now : p)] } : s)];
    }
}
