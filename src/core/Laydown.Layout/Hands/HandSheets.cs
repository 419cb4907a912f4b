using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Hands;

/// <summary>From layouts to sheets under a person's hands and back.</summary>
public static class HandSheets
{
    /// <summary>Most sheets, and most pieces on all of them, that are taken.</summary>
    public const int MostSheets = 5000, MostSpots = 50_000;

    /// <summary>Layouts as sheets that can be worked on.</summary>
    public static IReadOnlyList<HandSheet> From(IReadOnlyList<SheetLayout> layouts)
    {
        ArgumentNullException.ThrowIfNull(layouts);
        return [.. layouts.Select(l => new HandSheet(l.Repeats, [.. l.Placements.Select(p => new HandSpot(p.PieceId, p.Place.XMm, p.Place.YMm, 90 * p.QuarterTurns, p.Locked))]))];
    }

    /// <summary>Whether sheets from outside can be worked on at all: pieces known, numbers numbers, not too many.</summary>
    /// <returns>The sheets, positions rounded to whole micrometres, or what is wrong with them by its path.</returns>
    public static Reading<IReadOnlyList<HandSheet>> Read(IReadOnlyList<HandSheet>? sheets, HandRules rules)
    {
        ArgumentNullException.ThrowIfNull(rules);
        if (sheets is null || sheets.Count > MostSheets || sheets.Sum(s => s?.Spots?.Count ?? 0) > MostSpots)
            return Fault("/sheets", sheets is null ? "nothing" : "too many sheets or pieces", Invariant($"at most {MostSheets} sheets and {MostSpots} pieces"));
        HashSet<string> known = [.. rules.Pieces.Select(p => p.Id)];
        for (int s = 0; s < sheets.Count; s++)
        {
            if (sheets[s] is not { Repeats: >= 1 and <= 1_000_000, Spots: { } spots })
                return Fault(Invariant($"/sheets/{s}"), "no sheet, or repeats outside their range", "spots, and 1 to 1000000 repeats");
            for (int i = 0; i < spots.Count; i++)
            {
                if (spots[i]?.PieceId is not { } id || !known.Contains(id))
                    return Fault(Invariant($"/sheets/{s}/spots/{i}/pieceId"), spots[i]?.PieceId ?? "nothing", "a piece of the run");
                if (spots[i].Angle is not (0 or 90 or 180 or 270))
                    return Fault(Invariant($"/sheets/{s}/spots/{i}/angle"), Invariant($"{spots[i].Angle}°"), "0, 90, 180 or 270 degrees");
                if (!(Math.Abs(spots[i].XMm) <= 1e6 && Math.Abs(spots[i].YMm) <= 1e6))
                    return Fault(Invariant($"/sheets/{s}/spots/{i}"), Invariant($"{spots[i].XMm}, {spots[i].YMm} mm"), "a place on the sheet, mm");
            }
        }

        return Reading.Of<IReadOnlyList<HandSheet>>([.. sheets.Select(s => s with { Spots = [.. s.Spots.Select(Rounded)] })]);
    }

    /// <summary>Sheets as layouts: copies numbered in their order, offcuts as the cut frees them. Empty sheets stay, so that numbers agree.</summary>
    public static IReadOnlyList<SheetLayout> Layouts(IReadOnlyList<HandSheet> sheets, HandRules rules)
    {
        ArgumentNullException.ThrowIfNull(sheets);
        ArgumentNullException.ThrowIfNull(rules);
        Dictionary<string, int> copies = new(StringComparer.Ordinal);
        List<SheetLayout> layouts = [];
        foreach (HandSheet sheet in sheets)
        {
            List<Placement> placements = [];
            foreach (HandSpot spot in sheet.Spots)
            {
                int copy = copies[spot.PieceId] = copies.GetValueOrDefault(spot.PieceId) + 1;
                placements.Add(new(spot.PieceId, copy, rules.PlaceOf(spot), spot.Turned, rules.Find(spot.PieceId)!.Part, spot.Angle, spot.Locked, rules.Find(spot.PieceId)!.SeamBleedMm));
            }

            // The first sheet's copies are numbered; its repeats use up the numbers that follow.
            foreach (HandSpot spot in sheet.Spots)
                copies[spot.PieceId] += sheet.Repeats - 1;
            layouts.Add(new(SizeOf(sheet, rules), rules.EdgeMarginMm, placements, sheet.Repeats, BareRests.Of(sheet, rules), Across(sheet, rules), Outlines(sheet, rules))
            {
                KeepOuts = rules.KeepOuts is { Count: > 0 } outs ? outs : null,
                StockId = rules.StockId,
                Faces = rules.Faces,
            });
        }

        return layouts;
    }

    /// <summary>What is saved: sheets without a piece are gone, and sheets with the same picture are one with their repeats together.</summary>
    public static IReadOnlyList<HandSheet> Tidy(IReadOnlyList<HandSheet> sheets)
    {
        ArgumentNullException.ThrowIfNull(sheets);
        return [.. sheets.Where(s => s.Spots.Count > 0).GroupBy(PictureOf, StringComparer.Ordinal).Select(g => g.First() with { Repeats = g.Sum(s => s.Repeats) })];
    }

    /// <summary>Copies of each piece that have no place, by its place in the rules; negative where too many lie about.</summary>
    public static IReadOnlyList<int> Missing(IReadOnlyList<HandSheet> sheets, HandRules rules)
    {
        ArgumentNullException.ThrowIfNull(sheets);
        ArgumentNullException.ThrowIfNull(rules);
        Dictionary<string, int> placed = sheets.SelectMany(s => s.Spots.Select(p => (p.PieceId, s.Repeats))).GroupBy(p => p.PieceId, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Sum(p => p.Repeats), StringComparer.Ordinal);
        return [.. rules.Pieces.Select(p => p.Quantity - placed.GetValueOrDefault(p.Id))];
    }

    /// <summary>Size of the sheet itself: of a roll the length used, lead-in and lead-out contained.</summary>
    public static SizeMm SizeOf(HandSheet sheet, HandRules rules)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(rules);
        if (!rules.IsRoll)
            return rules.Sheet;
        double end = sheet.Spots.Select(s => rules.LyingOf(s).Box.TopMm).DefaultIfEmpty(rules.LeadMm).Max();
        return new(rules.Sheet.WidthMm, Math.Clamp(end + rules.LeadMm, 2 * rules.LeadMm, 1_000_000));
    }

    private static IReadOnlyList<PieceOutline>? Outlines(HandSheet sheet, HandRules rules) =>
        rules.Contours is not { } contours ? null : [.. sheet.Spots.Select(s => s.PieceId).Distinct(StringComparer.Ordinal).Select(contours.Of)];

    // A roll that comes apart from edge to edge is cut across between its sections.
    private static IReadOnlyList<double>? Across(HandSheet sheet, HandRules rules) =>
        rules is { IsRoll: true, Process: CutProcess.Guillotine } && SawCuts.Of(sheet, rules) is { ComesApart: true } saw
            ? [.. saw.Cuts.Where(c => c.Stage == 1 && c.From.YMm == c.To.YMm).Select(c => c.From.YMm).Order()]
            : null;

    private static string PictureOf(HandSheet sheet) => string.Join(';', sheet.Spots
        .Select(p => Invariant($"{p.PieceId} {p.XMm:0.###} {p.YMm:0.###} {p.Angle} {p.Locked}")).Order(StringComparer.Ordinal));

    private static HandSpot Rounded(HandSpot spot) => spot with { XMm = Math.Round(spot.XMm, 3), YMm = Math.Round(spot.YMm, 3) };

    private static Reading<IReadOnlyList<HandSheet>> Fault(string field, string found, string wanted) =>
        Reading.Refused<IReadOnlyList<HandSheet>>(new InputFault("layout", null, field, found, wanted));
}
