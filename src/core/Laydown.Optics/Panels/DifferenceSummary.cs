namespace Laydown.Optics.Panels;

/// <summary>Colour differences over a picture, ΔE00.</summary>
/// <param name="Mean">Mean.</param>
/// <param name="P95">95 % of the picture are at most this.</param>
/// <param name="Max">Largest.</param>
public sealed record DifferenceSummary(double Mean, double P95, double Max)
{
    /// <summary>Summary of differences; all 0 for none.</summary>
    public static DifferenceSummary Of(IReadOnlyList<float> differences)
    {
        if (differences.Count == 0)
            return new(0, 0, 0);
        float[] sorted = [.. differences.Order()];
        return new(differences.Average(), sorted[Math.Min(sorted.Length - 1, (int)(0.95 * sorted.Length))], sorted[^1]);
    }
}
