using System.Text.Json.Nodes;
using System.Xml.Linq;
using Laydown.Cli;
using NetTopologySuite.Geometries;
using Area = NetTopologySuite.Geometries.Geometry;

namespace Laydown.Edges.Tests.Layouts;

/// <summary>Blanks on a belt through the command line; lanes, zones and pins are measured by a geometry library from the drawing and the layout alone.</summary>
public sealed class LaneCommandLawTests
{
    private const string Belt = """
        { "widthMm": 2600, "maxFeedMm": 3200, "maxLanes": 4, "laysMm": [20, 330, 670, 880, 1090, 1400, 1700, 1950, 2200], "side": "origin",
          "zones": [{ "id": "A", "startMm": 0, "widthMm": 310 }, { "id": "B", "startMm": 310, "widthMm": 340 }, { "id": "C", "startMm": 650, "widthMm": 420 },
                    { "id": "D", "startMm": 1070, "widthMm": 610 }, { "id": "E", "startMm": 1680, "widthMm": 500 }, { "id": "F", "startMm": 2180, "widthMm": 420 }],
          "pinsMm": [50, 150, 250, 350, 450, 550, 650, 750, 850, 950, 1050, 1150, 1250, 1350, 1450, 1550, 1650, 1750, 1850, 1950, 2050, 2150, 2250, 2350, 2450],
          "metresPerHour": 18, "loadSeconds": 20 }
        """;

    private static string Job(string pieces, string belt = Belt) => $$"""
        { "schema": "laydown/layout-job", "version": 1, "name": "blanks & lanes", "pieces": [{{pieces}}], "stocks": [], "rules": {}, "belt": {{belt}} }
        """;

    private const string Two = """{ "id": "large", "quantity": 10, "widthMm": 480, "heightMm": 640 }, { "id": "small", "quantity": 24, "widthMm": 300, "heightMm": 400 }""";

    [Theory]
    [InlineData(Two)]
    [InlineData("""{ "id": "only", "quantity": 40, "widthMm": 480, "heightMm": 640, "anglesDegrees": [0] }""")]
    public async Task Blanks_in_the_drawing_are_apart_on_lays_before_pins_and_over_open_zones(string pieces)
    {
        using JobBench bench = new();
        string path = bench.Write("job.json", Job(pieces));
        (int code, string output, string error) = await bench.RunAsync(CancellationToken.None, "layout", "make", path, "--iterations", "1", "--json");
        Assert.True(code == ExitCodes.Done, error + output);
        string folder = Path.Combine(bench.Folder, "job-layout");
        Assert.Equal(["belt.dxf", "belt.pdf", "belt.svg", "layout.json"], Directory.GetFiles(folder).Select(Path.GetFileName).Order(StringComparer.Ordinal));

        var svg = XElement.Load(Path.Combine(folder, "belt.svg"));
        Area[] blanks = Boxes(svg, "BLANK"), open = Boxes(svg, "ZONE_OPEN"), pins = Boxes(svg, "PIN");
        JsonNode job = JsonNode.Parse(Job(pieces))!;
        Assert.Equal(job["pieces"]!.AsArray().Sum(p => (int)p!["quantity"]!), blanks.Length);
        double[] lays = [.. job["belt"]!["laysMm"]!.AsArray().Select(l => (double)l!)];
        foreach (Area blank in blanks)
        {
            Envelope box = blank.EnvelopeInternal;
            Assert.Contains(lays, l => Math.Abs(l - box.MinX) < 0.002);
            Assert.InRange(box.MaxX, 0, 2600);

            // 80 % of the width over open zones, 60 mm of side strip at most, two pins half the width apart and 10 mm from the sides: the rules' own defaults.
            Area zones = Factory.BuildGeometry(open);
            Area line = Factory.CreateLineString([new(box.MinX, box.MinY + 1), new(box.MaxX, box.MinY + 1)]);
            Area over = line.Intersection(zones.Buffer(0));
            Assert.True(over.Length >= (0.8 * box.Width) - 0.002);
            Assert.True(over.EnvelopeInternal.MinX - box.MinX <= 60.002 && box.MaxX - over.EnvelopeInternal.MaxX <= 60.002);
            double[] before = [.. pins.Select(p => p.Centroid.X).Where(x => x >= box.MinX + 10 - 0.01 && x <= box.MaxX - 10 + 0.01)];
            Assert.True(before.Length >= 2 && before.Max() - before.Min() >= (box.Width / 2) - 0.01);
        }

        // Blanks of one lane touch, those of two are 10 mm apart; none lie over each other.
        for (int i = 0; i < blanks.Length; i++)
            for (int j = 0; j < i; j++)
                Assert.True(blanks[i].Intersection(blanks[j]).Area < 0.01
                    && (Math.Abs(blanks[i].EnvelopeInternal.MinX - blanks[j].EnvelopeInternal.MinX) < 0.002 || blanks[i].Distance(blanks[j]) >= 10 - 0.002));

        // From the origin's side the far lanes are loaded first.
        JsonNode lanes = bench.Json(Path.Combine("job-layout", "layout.json"))["lanes"]!;
        int[] loaded = [.. lanes["place"]!["lanes"]!.AsArray().OrderBy(l => (double)l!["startMm"]!).Select(l => (int)l!["loaded"]!)];
        Assert.Equal(Enumerable.Range(1, loaded.Length).Reverse(), loaded);
        double feed = (double)lanes["feedMm"]!;
        Assert.Equal(blanks.Max(b => b.EnvelopeInternal.MaxY) - blanks.Min(b => b.EnvelopeInternal.MinY), feed, 0.01);
        Assert.Equal(blanks.Length / Math.Max(feed / 1000 / 18, blanks.Length * 20 / 3600.0), (double)lanes["piecesPerHour"]!, 6);
        (int check, string said, _) = await bench.RunAsync(CancellationToken.None, "layout", "check", Path.Combine(folder, "layout.json"));
        Assert.True(check == ExitCodes.Done, said);
    }

    [Fact]
    public async Task A_belt_whose_zones_overlap_is_refused_by_name()
    {
        using JobBench bench = new();
        string path = bench.Write("job.json", Job(Two, Belt.Replace("\"startMm\": 310", "\"startMm\": 300", StringComparison.Ordinal)));
        (int code, _, string error) = await bench.RunAsync(CancellationToken.None, "layout", "make", path);
        Assert.Equal(ExitCodes.Refused, code);
        Assert.Contains("/belt/zones, B", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Lanes_changed_by_hand_are_found_out_and_not_exported()
    {
        using JobBench bench = new();
        string path = bench.Write("job.json", Job(Two));
        await bench.RunAsync(CancellationToken.None, "layout", "make", path);
        string layout = Path.Combine(bench.Folder, "job-layout", "layout.json");
        JsonNode json = JsonNode.Parse(await File.ReadAllTextAsync(layout, TestContext.Current.CancellationToken))!;
        json["lanes"]!["place"]!["lanes"]![0]!["startMm"] = 33;
        await File.WriteAllTextAsync(layout, json.ToJsonString(), TestContext.Current.CancellationToken);
        (int code, _, string error) = await bench.RunAsync(CancellationToken.None, "layout", "export", layout, "--out", Path.Combine(bench.Folder, "again"));
        Assert.Equal(ExitCodes.Held, code);
        Assert.Contains("one of the lays", error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(bench.Folder, "again")));
    }

    private static readonly GeometryFactory Factory = new();

    private static Area[] Boxes(XElement svg, string layer)
    {
        XNamespace ns = "http://www.w3.org/2000/svg";
        return [.. svg.Elements(ns + "g").Where(g => (string?)g.Attribute("id") == layer).Elements(ns + "path").Select(p => Ring((string)p.Attribute("d")!))];
    }

    private static Area Ring(string data)
    {
        Coordinate[] corners = [.. data.TrimEnd('Z').Split('M', 'L').Where(t => t.Length > 0).Select(t =>
        {
            double[] xy = [.. t.Split(' ').Select(n => double.Parse(n, System.Globalization.CultureInfo.InvariantCulture))];
            return new Coordinate(xy[0], xy[1]);
        })];
        return Factory.CreatePolygon([.. corners, corners[0]]);
    }
}
