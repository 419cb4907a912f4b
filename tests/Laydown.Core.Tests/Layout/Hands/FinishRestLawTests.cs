using Laydown.Layout.Hands;
using Laydown.Layout.Search;
using Laydown.Layout.Sheets;

namespace Laydown.Core.Tests.Layout.Hands;

public sealed class FinishRestLawTests
{
    public static IEnumerable<TheoryDataRow<int, CutProcess>> Cases() =>
        from seed in Enumerable.Range(1, 10)
        from process in Enum.GetValues<CutProcess>()
        select new TheoryDataRow<int, CutProcess>(seed, process);

    [Theory, MemberData(nameof(Cases))]
    public void Locked_pieces_stay_and_the_rest_keeps_every_rule(int seed, CutProcess process)
    {
        Random chance = new(seed);
        IReadOnlyList<Piece> pieces = LayoutConflictsLawTests.Draw(chance, 3 + chance.Next(8));
        HandRules rules = new(pieces, new(1220, 2440), 10, 4, process);
        List<HandSpot> locked = Locked(pieces, chance);
        List<IReadOnlyList<HandSheet>> told = [];
        IReadOnlyList<HandSheet> done = FinishRest.Solve([new(1, locked)], rules, new(seed, 60), told.Add, CancellationToken.None);

        Assert.Equal(locked, done[0].Spots.Where(s => s.Locked));
        Assert.DoesNotContain(done.Skip(1).SelectMany(s => s.Spots), s => s.Locked);
        Assert.Empty(SheetChecker.Faults(pieces, [.. HandSheets.Layouts(done, rules).Select(s => s with { Offcuts = [] })], 4, process == CutProcess.Guillotine));
        Assert.Empty(LayoutConflicts.Of(done, rules));
        Assert.Equal(Text(done), Text(told[^1]));
        Assert.Equal(told.Select(t => t.Sum(s => s.Repeats)).OrderDescending(), told.Select(t => t.Sum(s => s.Repeats)));
        Assert.Equal(Text(done), Text(FinishRest.Solve([new(1, locked)], rules, new(seed, 60), null, CancellationToken.None)));
    }

    [Fact]
    public void Stopped_at_once_it_still_answers_with_every_piece()
    {
        HandRules rules = new([new("a", new(300, 200), 3, 100, true)], new(1220, 2440), 10, 5, CutProcess.Guillotine);
        using CancellationTokenSource stopped = new();
        stopped.Cancel();
        Assert.Empty(LayoutConflicts.Of(FinishRest.Solve([], rules, new(), null, stopped.Token), rules));
    }

    [Fact]
    public void A_locked_picture_printed_several_times_stays_on_all_its_sheets_and_they_take_the_rest()
    {
        HandRules rules = new([new("a", new(500, 500), 0, 3, true), new("b", new(600, 600), 0, 7, true)], new(1220, 2440), 0, 0, CutProcess.Free);
        IReadOnlyList<HandSheet> done = FinishRest.Solve([new(3, [new("a", 0, 0, Locked: true)])], rules, new(1, 40), null, CancellationToken.None);
        Assert.Equal([0, 0], HandSheets.Missing(done, rules));
        Assert.Equal(3, done.Sum(s => s.Repeats));
        Assert.All(done, s => Assert.Equal(new("a", 0, 0, Locked: true), s.Spots[0]));
    }

    [Theory]
    [InlineData(ConflictKind.Saw)]
    [InlineData(ConflictKind.Overlap)]
    public void What_no_saw_parts_and_what_overlaps_among_the_locked_is_left_as_it_lies_and_the_rest_keeps_the_rules(ConflictKind kind)
    {
        IReadOnlyList<Piece> pieces = [new("h", new(300, 100), 0, 2, true), new("v", new(100, 300), 0, 2, true), new("a", new(400, 300), 0, 9, true)];
        HandRules rules = new(pieces, new(1220, 2440), 10, 5, CutProcess.Guillotine);
        HandSpot[] locked = kind == ConflictKind.Saw
            ? [new("h", 10, 10, Locked: true), new("v", 315, 10, Locked: true), new("h", 115, 315, Locked: true), new("v", 10, 115, Locked: true)]
            : [new("h", 10, 10, Locked: true), new("h", 100, 50, Locked: true)];
        IReadOnlyList<HandSheet> done = FinishRest.Solve([new(1, locked)], rules, new(1, 20), null, CancellationToken.None);
        Assert.Equal(locked, done[0].Spots.Where(s => s.Locked));
        Assert.Equal([0, 0, 0], HandSheets.Missing(done, rules));
        Assert.All(LayoutConflicts.Of(done, rules), c => Assert.Equal((kind, 0), (c.Kind, c.Sheet)));
        Assert.Empty(LayoutConflicts.Of(done, rules).SelectMany(c => kind == ConflictKind.Saw ? [] : c.Spots.Where(s => !done[c.Sheet].Spots[s].Locked)));
    }

    [Theory]
    [InlineData(CutProcess.Free)]
    [InlineData(CutProcess.Guillotine)]
    public void A_place_kept_out_is_kept_by_the_gap_when_the_rest_is_laid_out(CutProcess process)
    {
        HandRules rules = new([new("a", new(380, 380), 0, 12, true)], new(1220, 2440), 10, 5, process) { KeepOuts = [new(600, 1200, 60, 60)] };
        IReadOnlyList<HandSheet> done = FinishRest.Solve([new(1, [new("a", 10, 10, Locked: true)])], rules, new(1, 20), null, CancellationToken.None);
        Assert.Empty(LayoutConflicts.Of(done, rules));
    }

    [Fact]
    public void A_roll_gets_no_longer_than_it_was()
    {
        HandRules rules = new([new("a", new(600, 900), 3, 9, true), new("b", new(300, 250), 3, 12, true)], new(1370, 50_000), 10, 5, CutProcess.Free) { IsRoll = true, LeadMm = 150 };
        List<HandSheet> long_ = [new(1, [.. Enumerable.Range(0, 9).Select(i => new HandSpot("a", 10, 150 + (i * 905), Locked: i < 2)), .. Enumerable.Range(0, 12).Select(i => new HandSpot("b", 650, 150 + (i * 255)))])];
        IReadOnlyList<HandSheet> done = FinishRest.Solve(long_, rules, new(1, 60), null, CancellationToken.None);
        Assert.Empty(LayoutConflicts.Of(done, rules));
        Assert.True(HandSheets.SizeOf(done[0], rules).HeightMm < HandSheets.SizeOf(long_[0], rules).HeightMm);
    }

    // Two pieces somewhere on the first sheet, clear of each other.
    private static List<HandSpot> Locked(IReadOnlyList<Piece> pieces, Random chance) =>
        [new(pieces[0].Id, 40 + chance.Next(60), 30 + chance.Next(200), Locked: true), new(pieces[1].Id, 200 + chance.Next(100), 1300 + chance.Next(200), Locked: true)];

    private static string Text(IReadOnlyList<HandSheet> sheets) => string.Join('\n', sheets.Select(s => Invariant($"{s.Repeats} {string.Join(' ', s.Spots)}")));
}
