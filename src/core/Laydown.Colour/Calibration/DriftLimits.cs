namespace Laydown.Colour.Calibration;

/// <summary>How far a press may move; all common practice, no source.</summary>
/// <param name="PaperDifference">Bare stock, ΔE00.</param>
/// <param name="SolidDifference">A full ink, ΔE00.</param>
/// <param name="TonePercent">A tone of a wedge, percent of tone value.</param>
/// <param name="OverprintMean">Mean over patches of several inks, ΔE00.</param>
public sealed record DriftLimits(double PaperDifference, double SolidDifference, double TonePercent, double OverprintMean)
{
    /// <summary>1.5, 3.5, 3 % and 2.5.</summary>
    public static DriftLimits Usual { get; } = new(1.5, 3.5, 3, 2.5);
}
