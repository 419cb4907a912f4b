using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Hands;

/// <summary>Does to a layout what a person asks for. Pure: the sheets given stay as they were, so that anything can be undone.</summary>
/// <remarks>What comes out may have conflicts; <see cref="LayoutConflicts"/> tells them. Only what makes no sense is refused.</remarks>
public static class LayoutEdit
{
    /// <summary>Does it.</summary>
    /// <returns>The layout after it, or why it cannot be done: no such sheet or piece, a locked piece, a panel that may not turn, nothing left to put.</returns>
    public static Reading<HandDone> Apply(IReadOnlyList<HandSheet> sheets, HandEdit edit, HandRules rules)
    {
        ArgumentNullException.ThrowIfNull(sheets);
        ArgumentNullException.ThrowIfNull(edit);
        ArgumentNullException.ThrowIfNull(rules);
        if (edit.Verb == HandVerb.AddSheet)
            return Add(sheets, rules);
        if (edit.Sheet < 0 || edit.Sheet >= sheets.Count)
            return Refused("/edit/sheet", Invariant($"sheet {edit.Sheet + 1}"), Invariant($"1 to {sheets.Count}"));
        if (Far(edit.XMm) || Far(edit.YMm) || !(edit.ReachMm is >= 0 and <= 1000))
            return Refused("/edit", Invariant($"{edit.XMm}, {edit.YMm} mm within {edit.ReachMm} mm"), "a place on the sheet");
        HandSheet sheet = sheets[edit.Sheet];
        if (edit.Verb == HandVerb.Look && edit.Spot < sheet.Spots.Count)
            return Reading.Of(new HandDone(sheets, edit.Sheet, Math.Max(-1, edit.Spot)));
        if (edit.Verb is HandVerb.Put)
            return Put(sheets, edit, rules);
        if (edit.Verb is HandVerb.Split or HandVerb.Clear or HandVerb.LockSheet or HandVerb.UnlockSheet)
            return OfSheet(sheets, edit, sheet);
        if (edit.Spot < 0 || edit.Spot >= sheet.Spots.Count)
            return Refused("/edit/spot", Invariant($"piece {edit.Spot + 1}"), Invariant($"1 to {sheet.Spots.Count} on sheet {edit.Sheet + 1}"));
        HandSpot spot = sheet.Spots[edit.Spot];
        if (spot.Locked && edit.Verb is not (HandVerb.Look or HandVerb.Lock or HandVerb.Unlock))
            return Refused("/edit/spot", "a locked piece", "a piece that is not locked; unlock it first");
        return edit.Verb switch
        {
            HandVerb.Move => Reading.Of(With(sheets, edit, Snap.Of(sheet, edit.Spot, spot with { XMm = edit.XMm ?? spot.XMm, YMm = edit.YMm ?? spot.YMm }, edit.ReachMm, rules))),
            HandVerb.Turn => Turn(sheets, edit, spot, rules),
            HandVerb.Lock or HandVerb.Unlock => Reading.Of(With(sheets, edit, spot with { Locked = edit.Verb == HandVerb.Lock })),
            HandVerb.Pull => Pull(sheets, edit, spot, rules),
            HandVerb.TakeOff => Reading.Of(new HandDone(Replace(sheets, edit.Sheet, sheet with { Spots = Without(sheet, edit.Spot) }), edit.Sheet, -1)),
            _ => Refused("/edit/verb", Invariant($"{edit.Verb}"), "something that can be done"),
        };
    }

    private static Reading<HandDone> Add(IReadOnlyList<HandSheet> sheets, HandRules rules) => rules.IsRoll && sheets.Count > 0
        ? Refused("/edit/verb", "another sheet on a roll", "one length of roll")
        : Reading.Of(new HandDone([.. sheets, new HandSheet(1, [])], sheets.Count, -1));

    private static Reading<HandDone> OfSheet(IReadOnlyList<HandSheet> sheets, HandEdit edit, HandSheet sheet)
    {
        if (edit.Verb == HandVerb.Split)
        {
            return sheet.Repeats < 2
                ? Refused("/edit/sheet", "a sheet printed once", "a sheet printed several times")
                : Reading.Of(new HandDone(Parted(sheets, edit.Sheet), edit.Sheet + 1, -1));
        }

        IReadOnlyList<HandSpot> spots = edit.Verb == HandVerb.Clear
            ? [.. sheet.Spots.Where(s => s.Locked)]
            : [.. sheet.Spots.Select(s => s with { Locked = edit.Verb == HandVerb.LockSheet })];
        return Reading.Of(new HandDone(Replace(sheets, edit.Sheet, sheet with { Spots = spots }), edit.Sheet, edit.Verb == HandVerb.Clear ? -1 : edit.Spot));
    }

    private static Reading<HandDone> Turn(IReadOnlyList<HandSheet> sheets, HandEdit edit, HandSpot spot, HandRules rules)
    {
        // Half a turn keeps flutes and grain as they must run; panels are all printed the same way up.
        Piece piece = rules.Find(spot.PieceId)!;
        if (!piece.MayTurn && piece.Part is not null)
            return Refused("/edit/spot", "a panel", "a piece that may turn; panels are printed the same way up");
        int angle = (spot.Angle + (piece.MayTurn ? 90 : 180)) % 360;
        RectMm place = rules.PlaceOf(spot);
        double aside = piece.MayTurn ? (place.WidthMm - place.HeightMm) / 2 : 0;
        return Reading.Of(With(sheets, edit, spot with { Angle = angle, XMm = Math.Round(spot.XMm + aside, 3), YMm = Math.Round(spot.YMm - aside, 3) }));
    }

    private static Reading<HandDone> Pull(IReadOnlyList<HandSheet> sheets, HandEdit edit, HandSpot spot, HandRules rules)
    {
        if (edit.To < 0 || edit.To >= sheets.Count || edit.To == edit.Sheet)
            return Refused("/edit/to", Invariant($"sheet {edit.To + 1}"), Invariant($"another of the sheets 1 to {sheets.Count}"));

        // Where the two are printed unequally often, one of each stands alone first, so that no copy is lost or made.
        (int from, int to) = (edit.Sheet, edit.To);
        IReadOnlyList<HandSheet> parted = sheets;
        if (sheets[from].Repeats != sheets[to].Repeats)
        {
            if (sheets[from].Repeats > 1)
                (parted, to, from) = (Parted(parted, from), to > from ? to + 1 : to, from + 1);
            if (parted[to].Repeats > 1)
                (parted, from, to) = (Parted(parted, to), from > to ? from + 1 : from, to + 1);
        }

        HandSpot laid = edit is { XMm: double x, YMm: double y }
            ? Snap.Of(parted[to], -1, spot with { XMm = x, YMm = y }, edit.ReachMm, rules)
            : FreePlace.For(parted[to], spot, rules) ?? spot;
        IReadOnlyList<HandSheet> taken = Replace(parted, from, parted[from] with { Spots = Without(parted[from], edit.Spot) });
        return Reading.Of(new HandDone(Replace(taken, to, taken[to] with { Spots = [.. taken[to].Spots, laid] }), to, taken[to].Spots.Count));
    }

    private static Reading<HandDone> Put(IReadOnlyList<HandSheet> sheets, HandEdit edit, HandRules rules)
    {
        int piece = rules.Pieces.ToList().FindIndex(p => string.Equals(p.Id, edit.PieceId, StringComparison.Ordinal));
        HandSheet sheet = sheets[edit.Sheet];
        if (piece < 0 || HandSheets.Missing(sheets, rules)[piece] < sheet.Repeats)
            return Refused("/edit/pieceId", edit.PieceId ?? "nothing", Invariant($"a piece of which {sheet.Repeats} have no place"));
        RectMm printable = rules.Printable;
        HandSpot bare = new(edit.PieceId!, edit.XMm ?? printable.XMm, edit.YMm ?? printable.YMm);
        HandSpot laid = edit.XMm is null ? FreePlace.For(sheet, bare, rules) ?? bare : Snap.Of(sheet, -1, bare, edit.ReachMm, rules);
        return Reading.Of(new HandDone(Replace(sheets, edit.Sheet, sheet with { Spots = [.. sheet.Spots, laid] }), edit.Sheet, sheet.Spots.Count));
    }

    private static HandDone With(IReadOnlyList<HandSheet> sheets, HandEdit edit, HandSpot spot)
    {
        HandSheet sheet = sheets[edit.Sheet];
        return new(Replace(sheets, edit.Sheet, sheet with { Spots = [.. sheet.Spots.Select((s, i) => i == edit.Spot ? spot : s)] }), edit.Sheet, edit.Spot);
    }

    private static IReadOnlyList<HandSheet> Parted(IReadOnlyList<HandSheet> sheets, int at) =>
        [.. sheets.Take(at), sheets[at] with { Repeats = sheets[at].Repeats - 1 }, sheets[at] with { Repeats = 1 }, .. sheets.Skip(at + 1)];

    private static IReadOnlyList<HandSheet> Replace(IReadOnlyList<HandSheet> sheets, int at, HandSheet sheet) =>
        [.. sheets.Select((s, i) => i == at ? sheet : s)];

    private static IReadOnlyList<HandSpot> Without(HandSheet sheet, int spot) => [.. sheet.Spots.Where((_, i) => i != spot)];

    private static bool Far(double? mm) => mm is double value && !(Math.Abs(value) <= 1e6);

    private static Reading<HandDone> Refused(string field, string found, string wanted) =>
        Reading.Refused<HandDone>(new InputFault("layout", null, field, found, wanted));
}
