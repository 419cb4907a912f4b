namespace Laydown.Colour.Fits;

/// <summary>How alike two mixtures of ink are expected to look: the prior of the regression.</summary>
/// <remarks>
/// k(x, y) = Πᵢ (1 + aᵢ xᵢ yᵢ + bᵢ M(|xᵢ − yᵢ| / lᵢ)) / (1 + aᵢ + bᵢ) + s Πᵢ (1 + c M(|xᵢ − yᵢ| / (r lᵢ))) / (1 + c), M the Matérn function
/// of order 5/2 [Rasmussen2006]. The first terms of the product alone are all functions linear in each ink: Neugebauer's sum over
/// overprints. The Matérn terms bend them smoothly, the second product lets in what is short-ranged. One ink may bend more than another,
/// so lᵢ, aᵢ, bᵢ belong to each. The form is our own.
/// </remarks>
/// <param name="Linear">aᵢ, share of what is linear, one for each ink, over 0.</param>
/// <param name="Bent">bᵢ, share of what is smooth, over 0.</param>
/// <param name="Reach">lᵢ, over how much ink the smooth part keeps its value, parts of one full ink, over 0.</param>
/// <param name="ShortShare">s, variance of the short-ranged part, 0 or more.</param>
/// <param name="ShortReach">r, its reach as a part of lᵢ, over 0.</param>
/// <param name="ShortBent">c, over 0.</param>
/// <param name="Noise">Variance of a reading as a part of the prior's, over 0.</param>
public sealed record InkKernel(
    IReadOnlyList<double> Linear,
    IReadOnlyList<double> Bent,
    IReadOnlyList<double> Reach,
    double ShortShare,
    double ShortReach,
    double ShortBent,
    double Noise)
{
    private const double Root5 = 2.23606797749979;

    /// <summary>Number of inks.</summary>
    public int Inks => Linear.Count;

    /// <summary>Where the search for a kernel starts: with many inks charts are sparse, so the prior reaches further.</summary>
    /// <remarks>Found by trials on public four- and seven-ink charts.</remarks>
    public static InkKernel Usual(int inks) => inks < 6
        ? new(Same(0.6, inks), Same(0.3, inks), Same(1, inks), 0.0016, 0.35, 0.6, 1e-6)
        : new(Same(0.4, inks), Same(1.5, inks), Same(2, inks), 0.003, 0.55, 1, 1e-5);

    /// <summary>For charts of few levels: nearly linear in each ink, bending over its whole range.</summary>
    /// <remarks>Found by trials on the nodes alone of public four-ink charts.</remarks>
    public static InkKernel Stiff(int inks) => new(Same(0.287, inks), Same(0.009, inks), Same(1.83, inks), 0.0001, 0.3, 0.216, 2e-9);

    /// <summary>The factor of one ink in the first product.</summary>
    internal double LongFactor(int ink, double one, double other) =>
        (1 + (Linear[ink] * one * other) + (Bent[ink] * Matern(Math.Abs(one - other) / Reach[ink]))) / (1 + Linear[ink] + Bent[ink]);

    /// <summary>The factor of one ink in the second product.</summary>
    internal double ShortFactor(int ink, double one, double other) =>
        (1 + (ShortBent * Matern(Math.Abs(one - other) / (Reach[ink] * ShortReach)))) / (1 + ShortBent);

    private static double[] Same(double value, int inks) => [.. Enumerable.Repeat(value, inks)];

    private static double Matern(double distance)
    {
        double r = distance * Root5;
        return (1 + r + (r * r / 3)) * Math.Exp(-r);
    }
}
