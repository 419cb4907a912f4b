using Laydown.Measures;

namespace Laydown.Plan.Runs;

/// <summary>Time of a run, step by step.</summary>
/// <param name="SetUpMinutes">Set-up, min.</param>
/// <param name="PrintMinutes">Printing, all sheets and layers, min.</param>
/// <param name="HandlingMinutes">Loading and off-loading not hidden behind printing, min.</param>
/// <param name="ScansPerSheet">Carriage scans for one sheet, all layers.</param>
/// <param name="Figures">How each was computed.</param>
public sealed record RunTime(
    double SetUpMinutes, double PrintMinutes, double HandlingMinutes, int ScansPerSheet, IReadOnlyList<Figure> Figures)
{
    /// <summary>All together, min.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public double TotalMinutes => SetUpMinutes + PrintMinutes + HandlingMinutes;

    /// <summary>How many of the run's pieces are ready in an hour of printing and handling, set-up not counted; 0 where the run takes no time.</summary>
    /// <param name="pieces">Pieces of the run.</param>
    public double PerHour(int pieces) => PrintMinutes + HandlingMinutes > 0 ? 60 * pieces / (PrintMinutes + HandlingMinutes) : 0;
}
