using System.Text.Json.Nodes;
using System.Xml.Linq;
using Laydown.Cli;
using Laydown.Formats.Json;
using Laydown.Intake.Layout;
using Laydown.Layout.Jobs;
using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Utilities;
using Area = NetTopologySuite.Geometries.Geometry;

namespace Laydown.Edges.Tests.Layouts;

/// <summary>Jobs go the whole way through the command line; what comes out is measured by a geometry library from the files alone.</summary>
public sealed class LayoutCommandLawTests
{
    private const string Star = "\"contour\": { \"path\": \"M 50 100 L 61 65 L 98 65 L 68 43 L 79 8 L 50 30 L 21 8 L 32 43 L 2 65 L 39 65 Z\" }";

    public static TheoryData<string, string> Jobs() => new()
    {
        { "boards", JobBench.Job("""{ "id": "a", "quantity": 7, "widthMm": 300, "heightMm": 200 }, { "id": "b", "quantity": 5, "widthMm": 410, "heightMm": 90, "anglesDegrees": [0] }""",
            """{ "id": "s", "kind": "board", "widthMm": 1000, "heightMm": 700, "price": 20, "edgeMarginMm": 8 }""") },
        { "saw", JobBench.Job("""{ "id": "a", "quantity": 9, "widthMm": 300, "heightMm": 200 }, { "id": "b", "quantity": 6, "widthMm": 120, "heightMm": 90 }""",
            """{ "id": "s", "kind": "board", "widthMm": 1000, "heightMm": 700, "price": 20 }""", "\"toolMm\": 4, \"process\": \"guillotine\"") },
        { "roll", JobBench.Job("""{ "id": "a", "quantity": 7, "widthMm": 300, "heightMm": 200 }, { "id": "b", "quantity": 5, "widthMm": 410, "heightMm": 90 }""",
            """{ "id": "r", "kind": "roll", "widthMm": 1370, "heightMm": 30000, "price": 3, "edgeMarginMm": 10 }""", "\"gapMm\": 5, \"leadInMm\": 100, \"leadOutMm\": 50") },
        { "contours", JobBench.Job($$"""{ "id": "star", "quantity": 9, {{Star}} }, { "id": "a", "quantity": 4, "widthMm": 80, "heightMm": 60 }""",
            """{ "id": "s", "kind": "board", "widthMm": 500, "heightMm": 300, "price": 10, "edgeMarginMm": 5, "keepOutsMm": [{ "xMm": 0, "yMm": 0, "widthMm": 60, "heightMm": 40 }] }""") },
        { "contours on a roll", JobBench.Job($$"""{ "id": "star", "quantity": 6, {{Star}}, "anglesDegrees": [0] }""",
            """{ "id": "r", "kind": "roll", "widthMm": 400, "heightMm": 5000, "price": 3, "edgeMarginMm": 10 }""", "\"gapMm\": 5, \"leadInMm\": 30, \"leadOutMm\": 20") },
        { "two rolls", JobBench.Job("""{ "id": "a", "quantity": 7, "widthMm": 300, "heightMm": 200 }, { "id": "b", "quantity": 5, "widthMm": 410, "heightMm": 90, "stockId": "mesh" }""",
            """{ "id": "film", "kind": "roll", "widthMm": 700, "heightMm": 30000, "pricePerMetre": 3 }, { "id": "mesh", "kind": "roll", "widthMm": 500, "heightMm": 30000, "pricePerMetre": 2 }""",
            "\"gapMm\": 5, \"process\": \"guillotine\", \"leadInMm\": 100, \"leadOutMm\": 50, \"rollsSideBySide\": 2, \"centreGapMm\": 30, \"acrossMm\": 1300, \"longestSectionMm\": 900") },
        { "copies over", JobBench.Job($$"""{ "id": "star", "quantity": 5, "oversAllowed": 4, {{Star}} }""",
            """{ "id": "s", "kind": "board", "widthMm": 500, "heightMm": 300, "price": 10, "edgeMarginMm": 5 }""") },
    };

    [Theory, MemberData(nameof(Jobs))]
    public async Task A_job_is_laid_out_written_whole_and_keeps_every_distance_in_the_drawings(string name, string job)
    {
        using JobBench bench = new();
        string path = bench.Write("job.json", job);
        (int code, string output, string error) = await bench.RunAsync(CancellationToken.None, "layout", "make", path, "--iterations", "60", "--workers", "1", "--json");
        Assert.True(code == ExitCodes.Done, name + error + output);
        JsonNode answer = JsonNode.Parse(output)!;
        Assert.Equal("laydown/layout-made", (string?)answer["schema"]);
        string folder = Path.Combine(bench.Folder, "job-layout");
        Assert.Equal(answer["files"]!.AsArray().Select(f => (string?)f).Order(), Directory.GetFiles(folder).Select(Path.GetFileName).Order());

        double gap = name switch { "saw" => 4, _ => 5 };
        foreach (string svg in Directory.GetFiles(folder, "*.svg"))
            Distances(XElement.Load(svg), gap);
        (int check, string said, _) = await bench.RunAsync(CancellationToken.None, "layout", "check", Path.Combine(folder, "layout.json"));
        Assert.True(check == ExitCodes.Done, said);
    }

    [Fact]
    public async Task A_folder_as_make_writes_it_is_checked_by_the_layout_in_it_and_one_without_is_refused()
    {
        using JobBench bench = new();
        string path = bench.Write("job.json", Jobs().Select(r => r.Data.Item2).ElementAt(0));
        await bench.RunAsync(CancellationToken.None, "layout", "make", path, "--iterations", "20", "--workers", "1");
        string folder = Path.Combine(bench.Folder, "job-layout");
        (int code, string said, _) = await bench.RunAsync(CancellationToken.None, "layout", "check", folder);
        Assert.Equal(ExitCodes.Done, code);
        Assert.StartsWith("layout.json keeps its rules: ", said, StringComparison.Ordinal);
        Assert.Equal(said, (await bench.RunAsync(CancellationToken.None, "layout", "check", Path.Combine(folder, "layout.json"))).Out);

        (int bare, _, string error) = await bench.RunAsync(CancellationToken.None, "layout", "check", bench.Folder);
        Assert.Equal(ExitCodes.Refused, bare);
        Assert.Contains("layout.json, file: found nothing that can be opened", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_same_seed_and_iterations_give_the_same_layout_and_export_the_same_files()
    {
        using JobBench bench = new();
        string path = bench.Write("job.json", Jobs().Select(r => r.Data.Item2).ElementAt(3));
        foreach (string folder in new[] { "one", "two" })
            await bench.RunAsync(CancellationToken.None, "layout", "make", path, "--iterations", "40", "--seed", "7", "--workers", "2", "--out", Path.Combine(bench.Folder, folder));
        byte[] layout = File.ReadAllBytes(Path.Combine(bench.Folder, "one", "layout.json"));
        Assert.Equal(layout, File.ReadAllBytes(Path.Combine(bench.Folder, "two", "layout.json")));

        await bench.RunAsync(CancellationToken.None, "layout", "export", Path.Combine(bench.Folder, "one", "layout.json"), "--formats", "svg,dxf", "--out", Path.Combine(bench.Folder, "three"));
        Assert.All(Directory.GetFiles(Path.Combine(bench.Folder, "three")), f => Assert.Equal(
            File.ReadAllBytes(Path.Combine(bench.Folder, "one", Path.GetFileName(f))), File.ReadAllBytes(f)));

        // What was written is read again as it was.
        Assert.Equal(layout, LaydownJson.ToBytes(new JobReader().Layout(Path.Combine(bench.Folder, "one", "layout.json")).Value));
    }

    [Fact]
    public async Task A_layout_that_is_stopped_at_once_is_written_with_the_best_so_far()
    {
        using JobBench bench = new();
        string path = bench.Write("job.json", Jobs().Select(r => r.Data.Item2).ElementAt(0));
        using CancellationTokenSource stopped = new();
        await stopped.CancelAsync();
        (int code, string output, string error) = await bench.RunAsync(stopped.Token, "layout", "make", path);
        Assert.True(code is ExitCodes.Done or ExitCodes.Held, error);
        Assert.Contains("best so far", output, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(bench.Folder, "job-layout", "cut.pdf")));
    }

    [Fact]
    public async Task Written_contours_read_again_are_the_pieces_that_were_laid_out()
    {
        using JobBench bench = new();
        string path = bench.Write("job.json", Jobs().Select(r => r.Data.Item2).ElementAt(3));
        await bench.RunAsync(CancellationToken.None, "layout", "make", path, "--iterations", "20", "--workers", "1");
        JobLayout layout = new JobReader().Layout(Path.Combine(bench.Folder, "job-layout", "layout.json")).Value;
        JobShapes shapes = new(layout.Job);
        foreach (string ending in new[] { "svg", "dxf" })
        {
            for (int sheet = 0; sheet < layout.Sheets.Count; sheet++)
            {
                double[] read = [.. new JobReader().Contours(Path.Combine(bench.Folder, "job-layout", Invariant($"sheet-{sheet + 1:00}.{ending}"))).Value.Shapes
                    .Concat([]).Select(s => s.Area.AreaMm2).Order()];

                // The stock is the ring around all pieces: it is read as a shape with their holes, so areas of pieces are what is missing of it.
                double pieces = layout.Sheets[sheet].Spots.Sum(s => shapes.Piece(s.PieceId).AreaMm2);
                Assert.Equal((500 * 300) - pieces, read[^1], 0.5);
            }
        }
    }

    [Fact]
    public async Task Rolls_side_by_side_are_cut_across_between_their_pieces_in_every_drawing()
    {
        using JobBench bench = new();
        string path = bench.Write("job.json", Jobs().Select(r => r.Data.Item2).ElementAt(5));
        await bench.RunAsync(CancellationToken.None, "layout", "make", path, "--iterations", "60", "--workers", "1");
        string folder = Path.Combine(bench.Folder, "job-layout");
        XNamespace ns = "http://www.w3.org/2000/svg";
        int cuts = 0;
        foreach (string file in Directory.GetFiles(folder, "*.svg"))
        {
            var svg = XElement.Load(file);
            GeometryFactory factory = new();
            Area[] pieces = [.. svg.Elements(ns + "g").Single(g => (string?)g.Attribute("id") == "Cutting").Elements(ns + "path").Select(p => Ring(factory, (string)p.Attribute("d")!))];
            double[] across = [.. svg.Elements(ns + "g").Where(g => (string?)g.Attribute("id") == "CutAcross").Elements(ns + "path")
                .Select(p => double.Parse(((string)p.Attribute("d")!).Split(' ', 'L')[1], System.Globalization.CultureInfo.InvariantCulture))];
            Assert.All(across, y => Assert.All(pieces, p => Assert.InRange(factory.CreateLineString([new(0, y), new(2000, y)]).Distance(p), 2.5 - 0.002, 1e9)));
            string dxf = await File.ReadAllTextAsync(Path.ChangeExtension(file, "dxf"), TestContext.Current.CancellationToken);
            Assert.Equal(across.Length, dxf.Split("POLYLINE\r\n  8\r\nCUT_ACROSS\r\n").Length - 1);
            cuts += across.Length;
        }

        Assert.True(cuts > 0);
    }

    private static void Distances(XElement svg, double gap)
    {
        GeometryFactory factory = new();
        XNamespace ns = "http://www.w3.org/2000/svg";
        Area[] pieces = [.. svg.Elements(ns + "g").Single(g => (string?)g.Attribute("id") == "Cutting").Elements(ns + "path")
            .Select(p => Ring(factory, (string)p.Attribute("d")!))];
        double[] box = [.. ((string)svg.Attribute("viewBox")!).Split(' ').Select(n => double.Parse(n, System.Globalization.CultureInfo.InvariantCulture))];
        for (int i = 0; i < pieces.Length; i++)
        {
            Assert.True(new Envelope(0, box[2], 0, box[3]).Covers(pieces[i].EnvelopeInternal));
            for (int j = 0; j < i; j++)
                Assert.InRange(pieces[i].Distance(pieces[j]), gap - 0.002, double.MaxValue);
        }
    }

    private static Area Ring(GeometryFactory factory, string data)
    {
        Coordinate[] corners = [.. data.TrimEnd('Z').Split('M', 'L').Where(t => t.Length > 0).Select(t =>
        {
            double[] xy = [.. t.Split(' ').Select(n => double.Parse(n, System.Globalization.CultureInfo.InvariantCulture))];
            return new Coordinate(xy[0], xy[1]);
        })];
        return GeometryFixer.Fix(factory.CreatePolygon([.. corners, corners[0]]));
    }
}
