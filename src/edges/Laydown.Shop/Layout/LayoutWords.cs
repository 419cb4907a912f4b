using System.Globalization;
using Laydown.Layout.Hands;

namespace Laydown.Shop.Layout;

/// <summary>What was done to a layout, in words for eyes and ears.</summary>
internal static class LayoutWords
{
    internal static string Of(OpenedLayout opened, HandEdit edit, HandDone done, LayoutReport report)
    {
        string sheet = opened.Rules.IsRoll ? "the roll" : Invariant($"board {done.Sheet + 1}");
        string does = edit.Verb switch
        {
            HandVerb.Look when done.Spot < 0 => Invariant($"{Capital(sheet)}, {report.Sheets[done.Sheet].Spots.Count} pieces, {report.Sheets[done.Sheet].FillPercent:0} % under pieces"),
            HandVerb.AddSheet => Invariant($"Bare {sheet} added"),
            HandVerb.Clear => Invariant($"Cleared {sheet} of all that is not locked"),
            HandVerb.LockSheet => Invariant($"Locked every piece of {sheet}"),
            HandVerb.UnlockSheet => Invariant($"Let every piece of {sheet} go"),
            HandVerb.Split => Invariant($"One of the boards {edit.Sheet + 1} now stands alone as {sheet}"),
            HandVerb.TakeOff => Invariant($"Taken off {sheet}"),
            _ => Invariant($"{Piece(report, done)} {Done(edit.Verb, report.Sheets[done.Sheet].Spots[done.Spot], sheet)}"),
        };
        return Invariant($"{does}. {Wrong(report, done)}");
    }

    private static string Done(HandVerb verb, JudgedSpot spot, string sheet) => verb switch
    {
        HandVerb.Look => Invariant($"{Place(spot)} on {sheet}, {Mm(spot.WidthMm)} × {Mm(spot.HeightMm)} mm{(spot.Angle == 0 ? "" : Invariant($", turned to {spot.Angle} degrees"))}{(spot.Locked ? ", locked" : "")}"),
        HandVerb.Lock => "is locked",
        HandVerb.Unlock => "is no longer locked",
        HandVerb.Turn => Invariant($"turned to {spot.Angle} degrees, {Place(spot)}"),
        HandVerb.Pull or HandVerb.Put => Invariant($"now lies on {sheet}, {Place(spot)}"),
        _ => Invariant($"lies {Place(spot)} on {sheet}"),
    };

    private static string Place(JudgedSpot spot) => Invariant($"{Mm(spot.XMm)} mm from the left and {Mm(spot.YMm)} mm from below");

    private static string Piece(LayoutReport report, HandDone done)
    {
        JudgedSpot spot = report.Sheets[done.Sheet].Spots[done.Spot];
        return Invariant($"{spot.Name}, copy {spot.Copy},");
    }

    // What concerns the piece in hand is told in full, the rest by number.
    private static string Wrong(LayoutReport report, HandDone done)
    {
        IReadOnlyList<JudgedConflict> here = [.. report.Conflicts.Where(c => c.Sheet == done.Sheet && done.Spot >= 0 && c.Spots.Contains(done.Spot))];
        int others = report.Conflicts.Count - here.Count;
        string more = others switch { 0 => "", 1 => " 1 other conflict in the layout.", _ => Invariant($" {others} other conflicts in the layout.") };
        return here.Count == 0 && others == 0 ? "No conflict." : (string.Join(' ', here.Take(3).Select(c => c.Words)) + more).TrimStart();
    }

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];

    private static string Mm(double mm) => mm.ToString("0.#", CultureInfo.InvariantCulture);
}
