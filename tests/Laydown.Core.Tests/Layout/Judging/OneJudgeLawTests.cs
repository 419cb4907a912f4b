using Laydown.Layout.Hands;
using Laydown.Layout.Jobs;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Core.Tests.Layout.Judging;

/// <summary>A layout is judged alike as a layout made by hand and as the layout of a job.</summary>
public sealed class OneJudgeLawTests
{
    public static IEnumerable<TheoryDataRow<int, CutProcess, bool>> Cases() =>
        from seed in Enumerable.Range(1, 6)
        from process in Enum.GetValues<CutProcess>()
        from contours in (bool[])[false, true]
        where !contours || process == CutProcess.Free
        select new TheoryDataRow<int, CutProcess, bool>(seed, process, contours);

    [Theory, MemberData(nameof(Cases))]
    public void What_one_calls_sound_the_other_calls_sound(int seed, CutProcess process, bool contours)
    {
        Random chance = new(seed);
        PieceOutline hook = new("b", [new(0, 0), new(260, 0), new(260, 70), new(70, 70), new(70, 240), new(0, 240)], []);
        int sound = 0;
        for (int i = 0; i < 80; i++)
        {
            HandSpot[] spots = [.. Enumerable.Range(0, 3).Select(n => new HandSpot(n == 0 ? "b" : "a", chance.Next(0, 640), chance.Next(0, 560), 90 * chance.Next(4)))];
            IReadOnlyList<Piece> pieces = [new("a", new(150, 90), 0, 2, true), new("b", new(260, 240), 0, 1, true)];
            HandRules rules = new(pieces, new(900, 800), 8, 4, process) { Contours = contours ? new(pieces, [hook]) : null };
            JobLayout job = JobOf(spots, rules, contours ? hook : null);
            bool byHand = LayoutConflicts.Of([new(1, spots)], rules).Count == 0;
            Assert.Equal(byHand, JobChecks.Faults(job).Count == 0);
            sound += byHand ? 1 : 0;
        }

        Assert.InRange(sound, 4, 76);
    }

    private static JobLayout JobOf(HandSpot[] spots, HandRules rules, PieceOutline? hook)
    {
        JobContour? contour = hook is null ? null : new([.. hook.Outer.SelectMany(p => (double[])[p.XMm, p.YMm])], null);
        LayoutJob job = new(
            null, [new("a", 2, 150, 90, null, null), new("b", 1, hook is null ? 260 : null, hook is null ? 240 : null, contour, null)],
            [new("board", JobStockKind.Board, rules.Sheet.WidthMm, rules.Sheet.HeightMm, null, 0, rules.EdgeMarginMm)], new(0, rules.GapMm, rules.Process));
        JobSpot[] lying = [.. spots.Select((s, i) => rules.LyingOf(s).Box is var box ? new JobSpot(s.PieceId, i == 2 ? 2 : 1, box.XMm, box.YMm, s.Angle) : throw new InvalidOperationException())];
        return new(job, [new JobSheet("board", rules.Sheet, 1, lying, [], 0)], [], 0, 0, 1, null);
    }
}
