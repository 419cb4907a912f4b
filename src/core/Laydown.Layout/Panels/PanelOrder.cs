using Laydown.Layout.Sheets;

namespace Laydown.Layout.Panels;

/// <summary>Brings the panels of a graphic into the order in which they are numbered, so that neighbours are printed one after the other.</summary>
/// <remarks>A layout keeps its length and its distances: whole sections, stretches of the roll between two cuts across, change places.</remarks>
public static class PanelOrder
{
    /// <summary>The layouts with panels in order: along a roll by sections, over boards by sheets.</summary>
    public static IReadOnlyList<SheetLayout> InOrder(IReadOnlyList<SheetLayout> sheets)
    {
        ArgumentNullException.ThrowIfNull(sheets);
        return [.. sheets.Select(Along).OrderBy(s => s.Placements.Any(p => p.Part is not null) ? 0 : 1).ThenBy(FirstOf)];
    }

    private static SheetLayout Along(SheetLayout sheet)
    {
        if (sheet.Placements.All(p => NumberOf(p) == 0))
            return sheet;
        List<List<Placement>> sections = Sections(sheet.Placements);
        List<(double From, double To)> bands = [.. sections.Select(s => (s.Min(p => p.Place.YMm), s.Max(p => p.Place.TopMm)))];
        List<double> gaps = [.. bands.Skip(1).Select((b, i) => b.From - bands[i].To)];

        // Sections without panels keep their order behind the others.
        List<Placement> placed = [];
        List<double> ends = [];
        double at = bands[0].From;
        int number = 0;
        foreach ((List<Placement> section, int index) in sections.Select((s, i) => (s, i)).OrderBy(s => Rank(s.s)).ThenBy(s => s.i))
        {
            double shift = at - bands[index].From;
            placed.AddRange(Numbered(section).Select(p => p with { Place = p.Place with { YMm = p.Place.YMm + shift } }));
            ends.Add(at + bands[index].To - bands[index].From);
            at = ends[^1] + (number < gaps.Count ? gaps[number++] : 0);
        }

        // Distances between sections stay where they are in the row, and cuts across within them.
        return sheet with { Placements = placed, CutsAcrossMm = sheet.CutsAcrossMm is { } cuts ? [.. cuts.Select(c => Moved(c, bands, ends)).Order()] : null };
    }

    private static double Moved(double cut, List<(double From, double To)> bands, List<double> ends)
    {
        int before = bands.FindLastIndex(b => b.To <= cut + 1e-6);
        return before < 0 ? cut : ends[before] + cut - bands[before].To;
    }

    // Panels of one size within a section change places, so that they stand from left to right, then upward, in order.
    private static IEnumerable<Placement> Numbered(List<Placement> section)
    {
        List<Placement> spots = [.. section.OrderBy(p => p.Place.YMm).ThenBy(p => p.Place.XMm)];
        List<Placement> result = [.. spots.Where(p => NumberOf(p) == 0)];
        foreach (IGrouping<(double, double, bool), Placement> alike in spots.Where(p => NumberOf(p) > 0).GroupBy(p => (p.Place.WidthMm, p.Place.HeightMm, p.Turned)))
        {
            List<Placement> places = [.. alike];
            result.AddRange(alike.OrderBy(ItemOf, StringComparer.Ordinal).ThenBy(p => p.Copy).ThenBy(NumberOf).Select((p, i) => p with { Place = places[i].Place }));
        }

        return result.OrderBy(p => p.Place.YMm).ThenBy(p => p.Place.XMm);
    }

    private static List<List<Placement>> Sections(IReadOnlyList<Placement> placements)
    {
        List<List<Placement>> sections = [];
        double top = double.NegativeInfinity;
        foreach (Placement p in placements.OrderBy(p => p.Place.YMm).ThenBy(p => p.Place.XMm))
        {
            if (p.Place.YMm >= top - 1e-6)
                sections.Add([]);
            sections[^1].Add(p);
            top = Math.Max(top, p.Place.TopMm);
        }

        return sections;
    }

    private static (int, string, int, int) Rank(List<Placement> section)
    {
        Placement? first = section.Where(p => NumberOf(p) > 0).OrderBy(ItemOf, StringComparer.Ordinal).ThenBy(p => p.Copy).ThenBy(NumberOf).FirstOrDefault();
        return first is null ? (1, "", 0, 0) : (0, ItemOf(first), first.Copy, NumberOf(first));
    }

    private static int FirstOf(SheetLayout sheet) => sheet.Placements.Select(NumberOf).Where(n => n > 0).DefaultIfEmpty(int.MaxValue).Min();

    private static string ItemOf(Placement placement) => placement.PieceId[..Math.Max(0, placement.PieceId.LastIndexOf('/'))];

    private static int NumberOf(Placement placement)
    {
        int slash = placement.PieceId.LastIndexOf('/');
        return placement.Part is not null && slash > 0 && int.TryParse(placement.PieceId.AsSpan(slash + 1), out int number) ? number : 0;
    }
}
