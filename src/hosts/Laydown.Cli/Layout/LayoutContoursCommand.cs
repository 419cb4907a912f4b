using System.CommandLine;
using Laydown.Cli.Words;
using Laydown.Geometry.Outlines;
using Laydown.Measures;
using Laydown.Shop.Layout;

namespace Laydown.Cli.Layout;

/// <summary><c>laydown layout contours FILE</c>.</summary>
internal static class LayoutContoursCommand
{
    public static Command Make(Shared shared)
    {
        Argument<string> file = new("file") { Description = "A DXF or SVG file." };
        Command command = new("contours", "Shows the shapes of a DXF or SVG file and what had to be repaired.") { file };
        command.SetAction((parsed, _) => ShowAsync(shared.Answer(parsed), Path.GetFullPath(parsed.GetRequiredValue(file))));
        return command;
    }

    private static async Task<int> ShowAsync(Answer answer, string path)
    {
        await Task.Yield();
        Reading<MendedOutlines> read = Wiring.JobReader().Contours(path);
        if (!read.IsTaken)
            return answer.Fail(ExitCodes.Refused, Invariant($"{Path.GetFileName(path)} cannot be taken."), read.Faults);
        if (answer.AsJson)
        {
            answer.Json("layout-contours", new
            {
                file = path,
                shapes = read.Value.Shapes.Select(s => new
                {
                    s.Field,
                    s.Area.Bounds,
                    areaMm2 = s.Area.AreaMm2,
                    outerMm = Flat(s.Area.OuterRings()[0].Points),
                    holesMm = s.Area.Holes().Select(h => Flat(h.Points)),
                }),
                findings = read.Value.Findings,
            });
            return ExitCodes.Done;
        }

        LayoutWords.Findings(answer, [.. read.Value.Findings.Select(f => new JobFinding(Path.GetFileName(path), f))]);
        answer.Table(["shape", "size", "area cm²", "corners", "holes"], read.Value.Shapes.Select(s => (IReadOnlyList<string>)
            [s.Field, s.Area.Bounds.Size.ToString(), Invariant($"{s.Area.AreaMm2 / 100:0.##}"), Invariant($"{s.Area.OuterRings()[0].Points.Count}"), Invariant($"{s.Area.Holes().Count}")]));
        return ExitCodes.Done;
    }

    private static IReadOnlyList<double> Flat(IReadOnlyList<PointMm> ring) => [.. ring.SelectMany(p => (double[])[p.XMm, p.YMm])];
}
