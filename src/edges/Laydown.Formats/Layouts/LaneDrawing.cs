using System.Text;
using Laydown.Layout.Jobs;
using Laydown.Layout.Lanes;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Formats.Layouts;

/// <summary>Blanks in their lanes on the belt, from above: x across the belt from its origin, y along the feed from the front lay.</summary>
internal sealed class LaneDrawing
{
    private const double PinMm = 6, LayMm = 25, MarginMm = 60;

    private readonly JobBelt belt;
    private readonly JobLanes lanes;

    internal LaneDrawing(LayoutJob job, JobLanes lanes)
    {
        (belt, this.lanes) = (job.Belt!, lanes);
        Size = new(belt.WidthMm, lanes.FeedMm + (2 * MarginMm));
        Lines = [.. Ground(), .. Blanks()];
    }

    /// <summary>Size of the drawing, mm: the belt as far as blanks lie on it, and a margin before and behind.</summary>
    internal SizeMm Size { get; }

    /// <summary>All lines.</summary>
    internal IReadOnlyList<LaneLine> Lines { get; }

    /// <summary>The drawing as SVG in millimetres, with words.</summary>
    /// <param name="title">What it is, safe for SVG.</param>
    /// <param name="safe">Makes text safe for SVG.</param>
    internal string Svg(string title, Func<string, string> safe)
    {
        (double w, double h) = (Size.WidthMm, Size.HeightMm);
        BeltPlace place = lanes.Place;
        StringBuilder svg = new();
        svg.Append(Invariant($"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{w:0.###}mm\" height=\"{h:0.###}mm\" viewBox=\"0 0 {w:0.###} {h:0.###}\">\n"));
        svg.Append(Invariant($"  <title>{title}: {place.Lanes.Sum(l => l.Blanks)} blanks in {place.Lanes.Count} lanes</title>\n"));
        svg.Append(Invariant($"  <desc>Millimetres, seen from above, feed upward. Zones open: {safe(Listed(place.OpenZones))}; shut: {safe(Listed(place.ShutZones))}.</desc>\n"));
        foreach (IGrouping<string, LaneLine> layer in Lines.GroupBy(l => l.Layer, StringComparer.Ordinal))
        {
            svg.Append(Invariant($"  <g id=\"{layer.Key}\" fill=\"{(layer.Key == "ZONE_OPEN" ? "#e8eef2" : layer.Key == "BLANK" ? "#fff" : "none")}\" stroke=\"{(layer.First().IsFaint ? "#bbb" : "#111")}\" stroke-width=\"2\">\n"));
            foreach (LaneLine line in layer)
                svg.Append(Invariant($"    <path d=\"{string.Concat(line.Points.Select((p, i) => Invariant($"{(i == 0 ? 'M' : 'L')}{p.XMm:0.###} {h - p.YMm:0.###}")))}{(line.Closed ? "Z" : "")}\"/>\n"));
            svg.Append("  </g>\n");
        }

        svg.Append("  <g id=\"words\" font-family=\"sans-serif\" font-size=\"28\" text-anchor=\"middle\" fill=\"#111\">\n");
        foreach (BeltZone zone in belt.Zones ?? [])
            svg.Append(Invariant($"    <text x=\"{zone.StartMm + (zone.WidthMm / 2):0.###}\" y=\"40\">{safe(zone.Id)} {(place.OpenZones.Contains(zone.Id, StringComparer.Ordinal) ? "open" : "shut")}</text>\n"));
        foreach (Lane lane in place.Lanes)
            svg.Append(Words(lane, h, safe));
        return svg.Append("  </g>\n</svg>\n").ToString();
    }

    private static string Words(Lane lane, double height, Func<string, string> safe)
    {
        double x = lane.StartMm + (lane.WidthMm / 2);
        string[] words =
        [
            Invariant($"lane {lane.Number}, load {lane.Loaded}"),
            Invariant($"{lane.Blanks} × {lane.BlankId}{(lane.Turned == true ? ", turned" : "")}"),
            Invariant($"{lane.WidthMm:0.#} × {lane.FeedMm:0.#} mm, side lay {lane.StartMm:0.#} mm"),
        ];

        // A letter is a little over half as wide as it is high.
        double size = Math.Min(28, lane.WidthMm / (0.58 * words.Max(t => t.Length)));
        return string.Concat(words.Select((t, i) => Invariant($"    <text x=\"{x:0.###}\" y=\"{height - MarginMm - (lane.FeedMm!.Value / 2) + ((i - 1) * size * 1.3):0.###}\" font-size=\"{size:0.##}\">{safe(t)}</text>\n")));
    }

    private IEnumerable<LaneLine> Ground()
    {
        foreach (BeltZone zone in belt.Zones ?? [])
        {
            bool open = lanes.Place.OpenZones.Contains(zone.Id, StringComparer.Ordinal);
            yield return new(open ? "ZONE_OPEN" : "ZONE_SHUT", Corners(zone.StartMm, 0, zone.WidthMm, Size.HeightMm), true, IsFaint: true);
        }

        yield return new("BELT", Corners(0, 0, belt.WidthMm, Size.HeightMm), true);
        foreach (double lay in belt.LaysMm)
            yield return new("LAY", [new(lay, MarginMm - LayMm), new(lay, MarginMm)], false);
        foreach (double pin in belt.PinsMm ?? [])
            yield return new("PIN", [.. Enumerable.Range(0, 12).Select(i => new PointMm(pin + (PinMm * Math.Cos(i * Math.PI / 6)), MarginMm - PinMm + (PinMm * Math.Sin(i * Math.PI / 6))))], true);
    }

    private IEnumerable<LaneLine> Blanks()
    {
        foreach (Lane lane in lanes.Place.Lanes)
        {
            for (int i = 0; i < lane.Blanks; i++)
                yield return new("BLANK", Corners(lane.StartMm, MarginMm + (i * lane.FeedMm!.Value), lane.WidthMm, lane.FeedMm.Value), true);

            // Its place in the order of loading, in strokes that a paper without letters shows too.
            double high = Math.Min(60, Math.Min(lane.WidthMm, lane.FeedMm!.Value) / 4);
            foreach (IReadOnlyList<PointMm> stroke in StrokeDigits.Of(lane.Loaded, new(lane.StartMm + (high / 2), MarginMm + (high / 2)), high))
                yield return new("ORDER", stroke, false);
        }
    }

    private static IReadOnlyList<PointMm> Corners(double x, double y, double w, double h) => [new(x, y), new(x + w, y), new(x + w, y + h), new(x, y + h)];

    private static string Listed(IReadOnlyList<string> ids) => ids.Count == 0 ? "none" : string.Join(", ", ids);
}
