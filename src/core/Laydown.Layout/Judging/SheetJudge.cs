using Laydown.Layout.Packing;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Judging;

/// <summary>Judges how pieces lie on one sheet, whoever laid them: layouts made by hand and layouts of jobs are judged by this one code.</summary>
/// <remarks>Distances are measured between the shapes themselves, so nothing that a search left out or rounded is believed.</remarks>
public static class SheetJudge
{
    /// <summary>What a distance or an edge may miss, mm: layouts are written to a micrometre.</summary>
    public const double SlackMm = 0.002;

    /// <summary>All that is wrong: pairs, then each piece by itself; cuts from edge to edge are asked for once every piece has the room it needs.</summary>
    /// <param name="pieces">Pieces as they lie.</param>
    /// <param name="room">What they must keep to.</param>
    public static IEnumerable<SheetFlaw> Flaws(IReadOnlyList<LyingPiece> pieces, SheetRoom room)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        ArgumentNullException.ThrowIfNull(room);
        bool sound = true;
        foreach (SheetFlaw flaw in Pairs(pieces, room).Concat(Enumerable.Range(0, pieces.Count).SelectMany(i => Alone(pieces[i], i, room))))
        {
            sound = false;
            yield return flaw;
        }

        if (room.Process == CutProcess.Guillotine && sound && Stuck([.. pieces.Select(p => p.Box)], room.GapMm) is { Count: > 0 } stuck)
            yield return new(SheetFlawKind.Uncut, stuck, Around(stuck.Select(i => pieces[i].Box)), 0, 0);
    }

    // From left to right: only what begins before a piece and its gap end can be too near.
    private static IEnumerable<SheetFlaw> Pairs(IReadOnlyList<LyingPiece> pieces, SheetRoom room)
    {
        int[] order = [.. Enumerable.Range(0, pieces.Count).OrderBy(i => pieces[i].Box.XMm).ThenBy(i => i)];
        List<int> open = [];
        foreach (int i in order)
        {
            RectMm here = pieces[i].Box.Grown(Math.Max(room.GapMm, SlackMm));
            open.RemoveAll(o => pieces[o].Box.RightMm < here.XMm);
            foreach (int other in open.Where(o => pieces[o].Box.Overlaps(here, 0)))
                if (Pair(pieces, Math.Min(i, other), Math.Max(i, other), room) is { } flaw)
                    yield return flaw;
            open.Add(i);
        }
    }

    private static SheetFlaw? Pair(IReadOnlyList<LyingPiece> pieces, int one, int other, SheetRoom room)
    {
        var pair = PairDistance.Of(pieces[one], pieces[other], room.Process == CutProcess.Guillotine);
        if (pair.ApartMm >= room.GapMm - SlackMm)
            return null;
        return new(pair.ApartMm < -SlackMm ? SheetFlawKind.Overlap : SheetFlawKind.Gap, [one, other], pair.Where, pair.ApartMm, pair.SharedMm2);
    }

    private static IEnumerable<SheetFlaw> Alone(LyingPiece piece, int index, SheetRoom room)
    {
        if (!room.Inside.Holds(piece.Box, SlackMm) || room.Edge?.Holds(piece.Shape) == false)
            yield return new(SheetFlawKind.Outside, [index], piece.Box, 0, 0);
        foreach (RectMm kept in room.KeepOuts.Where(k => k.Grown(Math.Max(room.GapMm, SlackMm)).Overlaps(piece.Box, 0)))
            if (PairDistance.Of(piece, new(kept), alongAxes: false) is var pair && pair.ApartMm < room.GapMm - SlackMm)
                yield return new(SheetFlawKind.KeepOut, [index], kept, pair.ApartMm, pair.SharedMm2);
    }

    // Grown by the kerf, boxes that a cut parts do not overlap.
    private static IReadOnlyList<int> Stuck(IReadOnlyList<RectMm> boxes, double gapMm)
    {
        if (boxes.Count < 2)
            return [];
        RectMm all = Around(boxes);
        int Whole(double mm) => checked((int)Math.Round(mm * 1000));
        Box Grown(RectMm box) => new(
            Whole(box.XMm - all.XMm), Whole(box.YMm - all.YMm), Math.Max(1, Whole(box.WidthMm + gapMm - SlackMm)), Math.Max(1, Whole(box.HeightMm + gapMm - SlackMm)));
        return [.. SawTree.Of(new(0, 0, Whole(all.WidthMm + gapMm), Whole(all.HeightMm + gapMm)), [.. boxes.Select(Grown)]).Stuck.Order()];
    }

    private static RectMm Around(IEnumerable<RectMm> places)
    {
        RectMm[] all = [.. places];
        double x = all.Min(p => p.XMm), y = all.Min(p => p.YMm);
        return new(x, y, all.Max(p => p.RightMm) - x, all.Max(p => p.TopMm) - y);
    }
}
