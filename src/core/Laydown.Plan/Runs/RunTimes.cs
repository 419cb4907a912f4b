using Laydown.Measures;
using Laydown.Press;
using Laydown.Press.Machines;
using Laydown.Press.Stocks;

namespace Laydown.Plan.Runs;

/// <summary>Time of a run: set-up, scans, handling that printing does not hide.</summary>
public static class RunTimes
{
    /// <summary>Reckons the time.</summary>
    /// <param name="request">The run.</param>
    /// <param name="mode">The mode picked.</param>
    /// <returns>The time, or the faults of the mode.</returns>
    public static Reading<RunTime> Of(RunRequest request, Mode mode)
    {
        IReadOnlyList<int> faces = new ModeDemand(1, null, null, request.Stack, default).LayersByFace;
        List<Figure> figures = [];
        double printSeconds = 0;
        int scansPerSheet = 0;
        foreach ((SizeMm extent, int times) in PrintedGo.Of(request))
        {
            double each = 0;
            int scans = 0;
            foreach (int layers in faces)
            {
                Reading<ScanPlan> plan = Scanning.Of(request.Press, mode, extent.WidthMm, extent.HeightMm, layers);
                if (!plan.IsTaken)
                    return Reading.Refused<RunTime>(plan.Faults);
                each += plan.Value.Seconds;
                scans += plan.Value.Scans;
                if (figures.Count == 0)
                    figures.AddRange(plan.Value.Figures);
            }

            scansPerSheet = Math.Max(scansPerSheet, scans);
            printSeconds += each * times;
        }

        double handling = HandlingSeconds(request, printSeconds, faces.Count, out Figure handlingFigure);
        bool oneFile = request.Sheets.All(s => s.Faces?.OneFile == true);
        double setUp = request.Press.Costs.SetUpMinutes * (oneFile ? 1 : faces.Count);
        figures.Add(new("set-up", setUp, "min", oneFile ? Invariant($"{request.Press.Costs.SetUpMinutes} min, once: both faces are printed from one file") : Invariant($"{request.Press.Costs.SetUpMinutes} min × {faces.Count} printed face(s)"), "demo data"));
        figures.Add(new("printing", printSeconds / 60, "min", Invariant($"all scans of {Goes(request)} sheet(s) or row(s) of blanks"), FigureSource.Derived));
        figures.Add(handlingFigure);
        RunTime time = new(setUp, printSeconds / 60, handling / 60, scansPerSheet, figures);
        return Reading.Of(request.Press.Costs.Crew is { } crew ? Crewed(request, time, crew, faces.Count) : time);
    }

    // Of a crew all are there all the time; to one person alone a second comes for each sheet that one must not lift, to lay it on and take it off, for each face.
    private static RunTime Crewed(RunRequest request, RunTime time, int crew, int faces)
    {
        PressCosts costs = request.Press.Costs;
        bool heavy = request.Stocks.Any(s => s.Kind != StockKind.Roll && Cautions.NeedsTwo(s, SetUps.SheetMassKg(s)));
        double helped = crew < 2 && heavy ? Goes(request) * faces * (costs.LoadSeconds + costs.UnloadSeconds) / 60 : 0, minutes = (time.TotalMinutes * crew) + helped;
        return time with
        {
            CrewMinutes = minutes,
            Figures = [.. time.Figures, new("people at the press", minutes, "min", helped > 0
                ? Invariant($"{crew} person(s) × {time.TotalMinutes:0.0} min + {helped:0.0} min of a second who lifts each sheet on and off with them")
                : Invariant($"{crew} person(s) × {time.TotalMinutes:0.0} min"), FigureSource.Derived)],
        };
    }

    /// <summary>How often the press prints: sheets, or rows of blanks lying side by side in the lanes.</summary>
    public static int Goes(RunRequest request) => PrintedGo.Of(request).Sum(g => g.Times);

    // A roll is hung once, two rolls one after the other. Every board, or row of blanks side by side, is laid and taken off on each face.
    // Only what printing lasts can hide it, and the first is never hidden, nor are rolls: all hang before printing begins.
    private static double HandlingSeconds(RunRequest request, double printSeconds, int faces, out Figure figure)
    {
        PressCosts costs = request.Press.Costs;
        double each = costs.LoadSeconds + costs.UnloadSeconds;
        int handled = request.Stock.Kind == StockKind.Roll ? Math.Max(1, request.Belt.Lanes.Count) : Goes(request) * faces;
        double hidden = request.Stock.Kind == StockKind.Roll ? 0 : Math.Min(Throughput.HiddenSeconds(costs, 1e9) * (handled - 1), printSeconds);
        double seconds = (handled * each) - Math.Max(0, hidden);
        figure = new("handling not hidden", seconds / 60, "min",
            Invariant($"{handled} × ({costs.LoadSeconds} + {costs.UnloadSeconds}) s less {Math.Max(0, hidden):0} s done while printing ({costs.LoadOverlapPercent} %)"), FigureSource.Derived);
        return seconds;
    }
}
