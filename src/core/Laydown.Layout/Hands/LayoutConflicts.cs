using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Hands;

/// <summary>Judges layouts, whoever made them: distances, margins, turning, counts, and whether a saw takes a sheet apart.</summary>
public static class LayoutConflicts
{
    /// <summary>What floating point may lose, mm; a thousandth of what a press can place.</summary>
    private const double SlackMm = 0.0015;

    /// <summary>Everything wrong, sheet by sheet, stops before warnings; then what is wrong with the counts. Empty for a sound layout.</summary>
    /// <remarks>The gap is kept where two rectangles are apart by it along x or along y, as the searches keep it.</remarks>
    /// <exception cref="ArgumentException">A piece is none of the rules'.</exception>
    public static IReadOnlyList<LayoutConflict> Of(IReadOnlyList<HandSheet> sheets, HandRules rules)
    {
        ArgumentNullException.ThrowIfNull(sheets);
        ArgumentNullException.ThrowIfNull(rules);
        List<LayoutConflict> all = [];
        for (int i = 0; i < sheets.Count; i++)
            all.AddRange(OnSheet(sheets[i], i, rules));
        all.AddRange(Counts(sheets, rules));
        return all;
    }

    /// <summary>What is wrong on one sheet alone.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="number">Its number as the conflicts name it, from 0.</param>
    /// <param name="rules">What it is judged by.</param>
    public static IReadOnlyList<LayoutConflict> OnSheet(HandSheet sheet, int number, HandRules rules)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(rules);
        RectMm[] places = [.. sheet.Spots.Select(rules.PlaceOf)];
        List<LayoutConflict> all = [];
        Pairs(places, number, rules, all);
        for (int i = 0; i < places.Length; i++)
            Alone(sheet.Spots[i], places[i], i, number, rules, all);

        // A saw is only asked once every piece has the room it needs.
        if (rules.Process == CutProcess.Guillotine && !all.Any(c => c.Severity == Severity.Stop && c.Kind != ConflictKind.Turned)
            && SawCuts.Of(sheet, rules) is { ComesApart: false } saw)
            all.Add(new(ConflictKind.Saw, Severity.Warn, number, saw.Stuck, Around(saw.Stuck.Select(i => places[i])), 0, 0));
        return all;
    }

    private static void Pairs(RectMm[] places, int number, HandRules rules, List<LayoutConflict> all)
    {
        // From left to right: only what begins before a piece and its gap end can be too near.
        int[] order = [.. Enumerable.Range(0, places.Length).OrderBy(i => places[i].XMm).ThenBy(i => i)];
        for (int a = 0; a < order.Length; a++)
            for (int b = a + 1; b < order.Length && places[order[b]].XMm < places[order[a]].RightMm + rules.GapMm - SlackMm; b++)
                if (Pair(places, Math.Min(order[a], order[b]), Math.Max(order[a], order[b]), number, rules) is { } conflict)
                    all.Add(conflict);
    }

    private static LayoutConflict? Pair(RectMm[] places, int one, int other, int number, HandRules rules)
    {
        (RectMm a, RectMm b) = (places[one], places[other]);
        double x = Math.Max(a.XMm, b.XMm) - Math.Min(a.RightMm, b.RightMm), y = Math.Max(a.YMm, b.YMm) - Math.Min(a.TopMm, b.TopMm);
        double apart = Math.Max(x, y);
        if (apart >= rules.GapMm - SlackMm)
            return null;

        // Between the two, or what they share.
        RectMm where = new(Math.Min(Math.Max(a.XMm, b.XMm), Math.Min(a.RightMm, b.RightMm)), Math.Min(Math.Max(a.YMm, b.YMm), Math.Min(a.TopMm, b.TopMm)), Math.Abs(x), Math.Abs(y));
        return new(
            apart < -SlackMm ? ConflictKind.Overlap : ConflictKind.Gap, Severity.Stop, number, [one, other], where, Math.Round(apart, 3), rules.GapMm);
    }

    private static void Alone(HandSpot spot, RectMm place, int index, int number, HandRules rules, List<LayoutConflict> all)
    {
        RectMm sheet = new(0, 0, rules.Sheet.WidthMm, rules.Sheet.HeightMm), printable = rules.Printable;
        double room = Room(sheet, place);
        double wantedSides = rules.EdgeMarginMm, wantedEnds = rules.IsRoll ? rules.LeadMm : rules.EdgeMarginMm;
        if (room < -SlackMm)
            all.Add(new(ConflictKind.OverEdge, Severity.Stop, number, [index], place, Math.Round(room, 3), 0));
        else if (Room(printable, place) < -SlackMm)
        {
            double sides = Math.Min(place.XMm, sheet.RightMm - place.RightMm);
            bool atSides = sides < wantedSides - SlackMm;
            double found = atSides ? sides : Math.Min(place.YMm, sheet.TopMm - place.TopMm);
            all.Add(new(ConflictKind.Margin, Severity.Stop, number, [index], place, Math.Round(found, 3), atSides ? wantedSides : wantedEnds));
        }

        foreach (RectMm kept in rules.KeepOuts.Where(k => k.Grown(rules.GapMm).Overlaps(place, SlackMm)))
            all.Add(new(ConflictKind.KeepOut, Severity.Stop, number, [index], kept, 0, rules.GapMm));
        if (spot.Turned && !rules.Find(spot.PieceId)!.MayTurn)
            all.Add(new(ConflictKind.Turned, Severity.Stop, number, [index], place, 0, 0));
    }

    private static IEnumerable<LayoutConflict> Counts(IReadOnlyList<HandSheet> sheets, HandRules rules)
    {
        IReadOnlyList<int> missing = HandSheets.Missing(sheets, rules);
        for (int i = 0; i < missing.Count; i++)
        {
            Piece piece = rules.Pieces[i];
            if (missing[i] > 0)
                yield return new(ConflictKind.Missing, Severity.Stop, -1, [], default, missing[i], piece.Quantity, piece.Id);
            else if (missing[i] < 0)
                yield return new(ConflictKind.Surplus, Severity.Stop, -1, [], default, piece.Quantity - missing[i], piece.Quantity, piece.Id);
        }
    }

    /// <summary>Least room from a place to the edges around it, negative where it reaches over.</summary>
    private static double Room(RectMm around, RectMm place) => Math.Min(
        Math.Min(place.XMm - around.XMm, around.RightMm - place.RightMm), Math.Min(place.YMm - around.YMm, around.TopMm - place.TopMm));

    private static RectMm Around(IEnumerable<RectMm> places)
    {
        RectMm[] all = [.. places];
        double x = all.Min(p => p.XMm), y = all.Min(p => p.YMm);
        return new(x, y, all.Max(p => p.RightMm) - x, all.Max(p => p.TopMm) - y);
    }
}
