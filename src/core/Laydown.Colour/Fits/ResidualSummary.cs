namespace Laydown.Colour.Fits;

/// <summary>How far predicted and measured colours lie apart, ΔE00.</summary>
/// <param name="Count">Number of patches, at least one.</param>
/// <param name="Mean">Mean.</param>
/// <param name="Median">Median.</param>
/// <param name="P95">95th percentile: nearest rank.</param>
/// <param name="Max">Largest.</param>
public sealed record ResidualSummary(int Count, double Mean, double Median, double P95, double Max)
{
    /// <summary>The summary of some differences.</summary>
    /// <exception cref="ArgumentException">There is none.</exception>
    public static ResidualSummary Of(IEnumerable<double> differences)
    {
        double[] sorted = [.. differences.Order()];
        if (sorted.Length == 0)
            throw new ArgumentException("Residuals: found none; wanted at least one.", nameof(differences));
        int Rank(double share) => Math.Max(0, (int)Math.Ceiling(share * sorted.Length) - 1);
        return new(sorted.Length, sorted.Average(), sorted[Rank(0.5)], sorted[Rank(0.95)], sorted[^1]);
    }
}
