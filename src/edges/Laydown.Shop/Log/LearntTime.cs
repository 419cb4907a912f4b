using Laydown.Plan.Log;

namespace Laydown.Shop.Log;

/// <summary>A run's time beside what the log says of it.</summary>
/// <param name="EstimatedMinutes">As reckoned without the log, min.</param>
/// <param name="Correction">What the log says.</param>
/// <param name="Used">Whether the run's own times are corrected already.</param>
public sealed record LearntTime(double EstimatedMinutes, EstimateCorrection Correction, bool Used)
{
    /// <summary>The estimate corrected, min.</summary>
    public double Minutes => EstimatedMinutes * Correction.Factor;

    /// <summary>In a sentence for the operator.</summary>
    public string Words
    {
        get
        {
            if (Correction.AllRuns == 0)
                return Invariant($"Estimated {EstimatedMinutes:0} min; no run in the log to tell a range from.");
            string lately = Correction.LatelyRuns > 0
                ? Invariant($"; last {Correction.LatelyRuns} such {(Correction.LatelyRuns == 1 ? "run" : "runs")} would have taken {EstimatedMinutes * Correction.LeastLately:0}–{EstimatedMinutes * Correction.MostLately:0}")
                : "; no such run before, told from others";
            return Invariant($"Estimated {EstimatedMinutes:0} min{lately}; by the log {Minutes:0} min, nine of ten within {EstimatedMinutes * Correction.Low:0}–{EstimatedMinutes * Correction.High:0}.");
        }
    }

    /// <summary>The time of a run by a model.</summary>
    public static LearntTime Of(Laydown.Plan.Runs.Run run, EstimateModel model)
    {
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(model);
        return new(run.Time.TotalMinutes / (run.Time.LearntFactor ?? 1), model.For(run.PressId, run.Mode.ModeId, run.StockId), run.Time.LearntFactor is not null);
    }
}
