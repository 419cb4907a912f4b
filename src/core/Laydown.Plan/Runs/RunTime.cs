using Laydown.Measures;
using Laydown.Plan.Log;

namespace Laydown.Plan.Runs;

/// <summary>Time of a run, step by step.</summary>
/// <param name="SetUpMinutes">Set-up, min.</param>
/// <param name="PrintMinutes">Printing, all sheets and layers, min.</param>
/// <param name="HandlingMinutes">Loading and off-loading not hidden behind printing, min.</param>
/// <param name="ScansPerSheet">Carriage scans for one sheet, all layers.</param>
/// <param name="Figures">How each was computed.</param>
/// <param name="LearntFactor">What the minutes were multiplied with because the log says so; null where they stand as reckoned.</param>
/// <param name="LearntRuns">How many runs of this press, mode and stock that was learnt from; 0 where others stood in for them, null where it was not kept.</param>
public sealed record RunTime(
    double SetUpMinutes, double PrintMinutes, double HandlingMinutes, int ScansPerSheet, IReadOnlyList<Figure> Figures,
    [property: System.Text.Json.Serialization.JsonIgnore(Condition = System.Text.Json.Serialization.JsonIgnoreCondition.WhenWritingNull)] double? LearntFactor = null,
    [property: System.Text.Json.Serialization.JsonIgnore(Condition = System.Text.Json.Serialization.JsonIgnoreCondition.WhenWritingNull)] int? LearntRuns = null)
{
    /// <summary>Minutes of people at the press, all of them together; null where one person is taken, all the time.</summary>
    [System.Text.Json.Serialization.JsonIgnore(Condition = System.Text.Json.Serialization.JsonIgnoreCondition.WhenWritingNull)]
    public double? CrewMinutes { get; init; }

    /// <summary>Minutes of people at the press: those of its crew, else of one person.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public double LabourMinutes => CrewMinutes ?? TotalMinutes;

    /// <summary>All together, min.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public double TotalMinutes => SetUpMinutes + PrintMinutes + HandlingMinutes;

    /// <summary>In a sentence, how the log corrected the time; null where it stands as reckoned.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public string? LearntWords => (LearntFactor, LearntRuns) switch
    {
        (null, _) => null,
        ({ } factor, null) => Invariant($"Times are corrected by the log, × {factor:0.00}."),
        ({ } factor, 0) => Invariant($"Times are corrected by the log, × {factor:0.00}; no run of this press, mode and stock yet, others stand in."),
        ({ } factor, { } runs) => Invariant($"Times are corrected by the log, × {factor:0.00} from {runs} {(runs == 1 ? "run" : "runs")} of this press, mode and stock."),
    };

    /// <summary>The time corrected by what the log says; every part alike.</summary>
    /// <exception cref="InvalidOperationException">It was corrected already.</exception>
    public RunTime Corrected(EstimateCorrection correction)
    {
        if (LearntFactor is not null)
            throw new InvalidOperationException("The time was corrected already.");
        double factor = correction.Factor;
        return new(SetUpMinutes * factor, PrintMinutes * factor, HandlingMinutes * factor, ScansPerSheet,
            [.. Figures, new("correction by the log", factor, "×", correction.Because, "Gelman2013")], factor, correction.Runs)
        { CrewMinutes = CrewMinutes * factor };
    }

    /// <summary>How many of the run's pieces are ready in an hour of printing and handling, set-up not counted; 0 where the run takes no time.</summary>
    /// <param name="pieces">Pieces of the run.</param>
    public double PerHour(int pieces) => PrintMinutes + HandlingMinutes > 0 ? 60 * pieces / (PrintMinutes + HandlingMinutes) : 0;
}
