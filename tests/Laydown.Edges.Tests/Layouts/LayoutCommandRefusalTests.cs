using Laydown.Cli;
using Laydown.Formats.Json;
using Laydown.Intake.Layout;
using Laydown.Layout.Jobs;

namespace Laydown.Edges.Tests.Layouts;

public sealed class LayoutCommandRefusalTests
{
    private const string Board = """{ "id": "s", "kind": "board", "widthMm": 1000, "heightMm": 700 }""";
    private const string Square = """{ "id": "a", "quantity": 1, "widthMm": 100, "heightMm": 100 }""";

    public static TheoryData<string, string> Bad() => new()
    {
        { JobBench.Job(Square, Board, "\"gapMm\": -1"), "/rules/gapMm: found -1; wanted a number at least 0" },
        { JobBench.Job(Square.Replace("100", "0"), Board), "/pieces/0/" },
        { JobBench.Job("""{ "id": "a", "quantity": 1 }""", Board), "/pieces/0: found no size and no contour; wanted either widthMm and heightMm, or a contour." },
        { JobBench.Job(Square + "," + Square, Board), "the id a 2 times" },
        { JobBench.Job("""{ "id": "a", "quantity": 100000, "widthMm": 9, "heightMm": 9 }, { "id": "b", "quantity": 100000, "widthMm": 9, "heightMm": 9 }, { "id": "c", "quantity": 9, "widthMm": 9, "heightMm": 9 }""", Board), "200009 copies" },
        { JobBench.Job("""{ "id": "a", "quantity": 1, "contour": { "outerMm": [0, 0, 100, 100, 100, 0, 0, 100] } }""", Board), "/pieces/0/contour/outerMm: found a line that crosses itself at 50, 50 mm" },
        { JobBench.Job("""{ "id": "a", "quantity": 1, "contour": { "outerMm": [0, 0, 100, 0, 100, 50, 7] } }""", Board), "7 numbers" },
        { JobBench.Job("""{ "id": "a", "quantity": 1, "contour": { "path": "M 0 0 L 50 oops" } }""", Board), "/pieces/0/contour/path: found at character" },
        { JobBench.Job("""{ "id": "a", "quantity": 1, "contour": { "path": "M 0 0 L 50 0 L 50 40" } }""", Board), "an open line" },
        { JobBench.Job("""{ "id": "a", "quantity": 1, "contour": { "file": "nowhere.dxf" } }""", Board), "nowhere.dxf, file: found nothing that can be opened" },
        { JobBench.Job("""{ "id": "a", "quantity": 1, "contour": { "file": "../secret.dxf" } }""", Board), "a file name without folder" },
        { JobBench.Job("""{ "id": "a", "quantity": 1, "contour": { "outerMm": [0, 0, 90, 0, 90, 90], "holesMm": [[80, 10, 99, 10, 99, 20]] } }""", Board), "holesMm/0: found a hole that crosses" },
        { JobBench.Job(Square, Board.Replace("\"heightMm\": 700", "\"heightMm\": 700, \"edgeMarginMm\": 400")), "/stocks/0/edgeMarginMm" },
        { JobBench.Job("""{ "id": "a", "quantity": 1, "contour": { "path": "M0 0h9v9z" } }""", Board, "\"process\": \"guillotine\""), "guillotine with contours" },
        { JobBench.Job(Square.Replace("\"quantity\": 1", "\"quantity\": 1, \"oversAllowed\": -1"), Board), "/pieces/0/oversAllowed: found -1; wanted" },
        { JobBench.Job(Square.Replace("\"quantity\": 1", "\"quantity\": 1, \"oversAllowed\": 2.5"), Board), "/pieces/0/oversAllowed: found 2.5; wanted" },
        { JobBench.Job(Square.Replace("\"quantity\": 1", "\"quantity\": 1, \"oversAllowed\": 200001"), Board), "/pieces/0/oversAllowed: found 200001; wanted" },
        { JobBench.Job("""{ "id": "a", "quantity": 1, "contour": { "path": "M0 0h9v9z" } }""", Board, "\"oneLayout\": true"), "/rules/oneLayout: found one layout for contours or rolls; wanted rectangles on boards." },
        { JobBench.Job(Square, Board.Replace("\"board\"", "\"roll\""), "\"oneLayout\": true"), "/rules/oneLayout: found one layout for contours or rolls; wanted rectangles on boards." },
        { JobBench.Job(Square, Board, "\"oneLayout\": \"yes\""), "/rules/oneLayout: found" },
        { "{ \"schema\": \"laydown/order\" }", "/schema" },
        { "not json", "no JSON at line 1" },
    };

    [Theory, MemberData(nameof(Bad))]
    public async Task A_bad_job_is_refused_by_name_and_nothing_is_written(string job, string words)
    {
        using JobBench bench = new();
        string path = bench.Write("job.json", job);
        (int code, _, string error) = await bench.RunAsync(CancellationToken.None, "layout", "make", path, "--iterations", "1");
        Assert.Equal(ExitCodes.Refused, code);
        Assert.Contains(words, error, StringComparison.Ordinal);
        Assert.Equal(["job.json"], Directory.GetFileSystemEntries(bench.Folder).Select(Path.GetFileName));
    }

    [Fact]
    public async Task A_piece_larger_than_any_board_is_told_and_the_others_are_laid_out()
    {
        using JobBench bench = new();
        string path = bench.Write("job.json", JobBench.Job(Square + """, { "id": "big", "quantity": 2, "widthMm": 1500, "heightMm": 100 }""", Board));
        (int code, string output, _) = await bench.RunAsync(CancellationToken.None, "layout", "make", path, "--iterations", "1");
        Assert.Equal(ExitCodes.Held, code);
        Assert.Contains("without a place: 2 × big", output, StringComparison.Ordinal);
        Assert.Equal("a", Assert.Single(Assert.Single(new JobReader().Layout(Path.Combine(bench.Folder, "job-layout", "layout.json")).Value.Sheets).Spots).PieceId);
    }

    [Fact]
    public async Task Every_rule_that_a_changed_layout_breaks_is_named_and_it_is_not_exported()
    {
        using JobBench bench = new();
        string path = bench.Write("job.json", JobBench.Job(Square.Replace("\"quantity\": 1", "\"quantity\": 3, \"anglesDegrees\": [0]"), Board.Replace("\"heightMm\": 700", "\"heightMm\": 700, \"edgeMarginMm\": 10, \"copies\": 1")));
        await bench.RunAsync(CancellationToken.None, "layout", "make", path, "--iterations", "1");
        string file = Path.Combine(bench.Folder, "job-layout", "layout.json");
        JobLayout sound = new JobReader().Layout(file).Value;
        JobSheet sheet = sound.Sheets[0];
        (JobLayout Broken, string Words)[] broken =
        [
            (With(sheet.Spots[0] with { XMm = 5 }), "within the stock less 10 mm"),
            (With(sheet.Spots[0] with { XMm = sheet.Spots[1].XMm, YMm = sheet.Spots[1].YMm + 50 }), "an overlap of"),
            (With(sheet.Spots[0] with { XMm = sheet.Spots[1].XMm, YMm = sheet.Spots[1].YMm + 103 }), "3 mm apart; wanted at least 5 mm apart"),
            (With(sheet.Spots[0] with { AngleDegrees = 90 }), "90°; wanted 0°"),
            (With(sheet.Spots[0] with { PieceId = "ghost" }), "an id of the job"),
            (sound with { Sheets = [sheet with { Spots = [.. sheet.Spots.Skip(1)] }] }, "2 laid out and 0 without a place; wanted 3 in all"),
            (sound with { Sheets = [sheet with { Repeats = 2 }] }, "2 used; wanted at most 1"),
        ];
        foreach ((JobLayout layout, string words) in broken)
        {
            File.WriteAllBytes(file, LaydownJson.ToBytes(layout));
            (int check, string said, _) = await bench.RunAsync(CancellationToken.None, "layout", "check", file, "--json");
            Assert.Equal(ExitCodes.Held, check);
            Assert.Contains(words.Split("; wanted ")[0], said, StringComparison.Ordinal);
            (int export, _, string error) = await bench.RunAsync(CancellationToken.None, "layout", "export", file, "--out", Path.Combine(bench.Folder, "out"));
            Assert.Equal(ExitCodes.Held, export);
            Assert.Contains(words, error, StringComparison.Ordinal);
            Assert.False(Directory.Exists(Path.Combine(bench.Folder, "out")));
        }

        JobLayout With(JobSpot first) => sound with { Sheets = [sheet with { Spots = [first, .. sheet.Spots.Skip(1)] }] };
    }
}
