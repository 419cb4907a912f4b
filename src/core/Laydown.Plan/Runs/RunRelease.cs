using Laydown.Measures;

namespace Laydown.Plan.Runs;

/// <summary>A run that two people let go, with the head height that follows from what they measured.</summary>
/// <param name="Measured">What they measured.</param>
/// <param name="ThickestMm">The thickest that either of them found, mm.</param>
/// <param name="HighestPointMm">Thickest + edge lift or hump + ink, mm.</param>
/// <param name="HeadGap">Head height over the belt to set.</param>
/// <param name="Figures">How it was computed.</param>
public sealed record RunRelease(
    MeasuredSheet Measured, double ThickestMm, double HighestPointMm, HeadGap HeadGap, IReadOnlyList<Figure> Figures)
{
    /// <summary>When it was let go.</summary>
    public DateTimeOffset At { get; init; }
}
