using Laydown.Measures;

namespace Laydown.Optics.Layers;

/// <summary>What the inside of a turbid slab is to a ray of light: how much it meets, how much of that goes on in another direction, and
/// how far forward.</summary>
/// <remarks><c>default</c> is a slab without matter.</remarks>
public readonly record struct SlabMatter
{
    /// <summary>Matter of a slab.</summary>
    /// <param name="opticalThickness">(μ_a + μ_s) times thickness, 0 to 10 000.</param>
    /// <param name="albedo">μ_s/(μ_a + μ_s), 0 to 1.</param>
    /// <param name="asymmetry">g, mean cosine of a deflection by the law of [Henyey1941], −0.9 to 0.95; 0 spreads evenly to all
    /// sides.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or outside its range.</exception>
    public SlabMatter(double opticalThickness, double albedo, double asymmetry = 0) => (OpticalThickness, Albedo, Asymmetry) =
        (Bounds.Within(opticalThickness, 0, 10_000), Bounds.Within(albedo, 0, 1), Bounds.Within(asymmetry, -0.9, 0.95));

    /// <summary>Absorption and scattering along a straight ray through the thickness.</summary>
    public double OpticalThickness { get; }

    /// <summary>Share of what a ray meets that scatters it.</summary>
    public double Albedo { get; }

    /// <summary>Mean cosine of a deflection.</summary>
    public double Asymmetry { get; }

    /// <summary>μ_s(1 − g) times thickness: the scattering that counts after many deflections.</summary>
    public double ReducedScatter => OpticalThickness * Albedo * (1 - Asymmetry);

    /// <summary>Optical thickness with the scattering reduced: τ(1 − g).</summary>
    public double ReducedThickness => OpticalThickness * (1 - Asymmetry);

    /// <summary>Matter of the same amounts to the two fluxes: μ_a = K/2, μ_s(1 − g) = (S + K/8)/0.75 (from memory).</summary>
    /// <param name="amount">K and S times thickness.</param>
    /// <param name="asymmetry">g; −0.9 to 0.95.</param>
    public static SlabMatter From(TurbidAmount amount, double asymmetry = 0)
    {
        Bounds.Within(asymmetry, -0.9, 0.95);
        double absorbed = amount.Absorption / 2;
        double scattered = (amount.Scatter + (amount.Absorption / 8)) / (0.75 * (1 - asymmetry));
        return absorbed + scattered > 0 ? new(absorbed + scattered, scattered / (absorbed + scattered), asymmetry) : new(0, 0, asymmetry);
    }

    /// <summary>The amounts of the two fluxes: K = 2μ_a, S = 0.75·μ_s(1 − g) − 0.25·μ_a (from memory).</summary>
    /// <exception cref="ArgumentException">So much is absorbed that S comes out under 0: two fluxes do not hold here.</exception>
    public TurbidAmount ToAmount()
    {
        double absorbed = OpticalThickness * (1 - Albedo);
        double scatter = (0.75 * ReducedScatter) - (0.25 * absorbed);
        return scatter >= 0
            ? new(2 * absorbed, scatter)
            : throw new ArgumentException(Invariant(
                $"Matter of albedo {Albedo} and g {Asymmetry}: S times thickness comes out {scatter}; wanted 0 or more."));
    }
}
