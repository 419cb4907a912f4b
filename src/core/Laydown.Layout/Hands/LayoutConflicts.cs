using Laydown.Layout.Judging;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Hands;

/// <summary>Judges layouts, whoever made them: distances, margins, turning, counts, and whether a saw takes a sheet apart.</summary>
public static class LayoutConflicts
{
    /// <summary>Everything wrong, sheet by sheet, stops before warnings; then what is wrong with the counts. Empty for a sound layout.</summary>
    /// <remarks>Where a saw cuts, the gap is kept where two are apart by it along x or along y; else by the distance between the two themselves.</remarks>
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
        LyingPiece[] lying = [.. sheet.Spots.Select(rules.LyingOf)];
        List<LayoutConflict> all = [.. SheetJudge.Flaws(lying, rules.Room).Select(f => Told(f, number, lying, rules))];
        IEnumerable<LayoutConflict> turned = sheet.Spots.Select((s, i) => (s, i)).Where(p => p.s.Turned && !rules.Find(p.s.PieceId)!.MayTurn)
            .Select(p => new LayoutConflict(ConflictKind.Turned, Severity.Stop, number, [p.i], lying[p.i].Box, 0, 0));
        return [.. all.Where(c => c.Severity == Severity.Stop), .. turned, .. all.Where(c => c.Severity != Severity.Stop)];
    }

    // A sheet that a saw cannot part is for the person to judge: the router takes it.
    private static LayoutConflict Told(SheetFlaw flaw, int number, LyingPiece[] lying, HandRules rules) => flaw.Kind switch
    {
        SheetFlawKind.Overlap => new(ConflictKind.Overlap, Severity.Stop, number, flaw.Pieces, flaw.Where, Math.Round(flaw.ApartMm, 3), rules.GapMm),
        SheetFlawKind.Gap => new(ConflictKind.Gap, Severity.Stop, number, flaw.Pieces, flaw.Where, Math.Round(flaw.ApartMm, 3), rules.GapMm),
        SheetFlawKind.KeepOut => new(ConflictKind.KeepOut, Severity.Stop, number, flaw.Pieces, flaw.Where, 0, rules.GapMm),
        SheetFlawKind.Uncut => new(ConflictKind.Saw, Severity.Warn, number, flaw.Pieces, flaw.Where, 0, 0),
        _ => Outside(lying[flaw.Pieces[0]].Box, flaw.Pieces, number, rules),
    };

    private static LayoutConflict Outside(RectMm place, IReadOnlyList<int> spots, int number, HandRules rules)
    {
        RectMm sheet = new(0, 0, rules.Sheet.WidthMm, rules.Sheet.HeightMm);
        double room = Room(sheet, place), sides = Math.Min(place.XMm, sheet.RightMm - place.RightMm);
        if (room < -SheetJudge.SlackMm)
            return new(ConflictKind.OverEdge, Severity.Stop, number, spots, place, Math.Round(room, 3), 0);
        bool atSides = sides < rules.EdgeMarginMm - SheetJudge.SlackMm;
        double found = atSides ? sides : Math.Min(place.YMm, sheet.TopMm - place.TopMm);
        return new(
            ConflictKind.Margin, Severity.Stop, number, spots, place, Math.Round(found, 3), atSides || !rules.IsRoll ? rules.EdgeMarginMm : rules.LeadMm);
    }

    private static IEnumerable<LayoutConflict> Counts(IReadOnlyList<HandSheet> sheets, HandRules rules)
    {
        IReadOnlyList<int> missing = HandSheets.Missing(sheets, rules);
        for (int i = 0; i < missing.Count; i++)
        {
            Piece piece = rules.Pieces[i];
            if (missing[i] > 0)
                yield return new(ConflictKind.Missing, Severity.Stop, -1, [], default, missing[i], piece.Quantity, piece.Id);
            else if (missing[i] < -piece.MostOver)
                yield return new(ConflictKind.Surplus, Severity.Stop, -1, [], default, piece.Quantity - missing[i], piece.Quantity, piece.Id);
        }
    }

    /// <summary>Least room from a place to the edges around it, negative where it reaches over.</summary>
    private static double Room(RectMm around, RectMm place) => Math.Min(
        Math.Min(place.XMm - around.XMm, around.RightMm - place.RightMm), Math.Min(place.YMm - around.YMm, around.TopMm - place.TopMm));
}
