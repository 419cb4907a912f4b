namespace Laydown.Optics.Layers;

/// <summary>How much a layer absorbs and scatters in one band: the two constants of Kubelka and Munk, each times the thickness.</summary>
/// <remarks>Both 0 or more and finite, without unit. <c>default</c> is a layer that does nothing.</remarks>
public readonly record struct TurbidAmount
{
    /// <summary>An amount.</summary>
    /// <param name="absorption">K times thickness, 0 or more.</param>
    /// <param name="scatter">S times thickness, 0 or more.</param>
    /// <exception cref="ArgumentException">A value is NaN, endless or under 0: no layer gives light off.</exception>
    public TurbidAmount(double absorption, double scatter)
    {
        Absorption = NotNegative(absorption, "K", nameof(absorption));
        Scatter = NotNegative(scatter, "S", nameof(scatter));
    }

    /// <summary>K times thickness.</summary>
    public double Absorption { get; }

    /// <summary>S times thickness.</summary>
    public double Scatter { get; }

    /// <summary>The free layer, without surfaces.</summary>
    public LayerLight Layer => KubelkaMunk.Layer(Absorption, Scatter);

    /// <summary>Both in one layer: mixed in one film, or the amounts of two films of the same sort.</summary>
    /// <remarks>Linear in the amounts, which holds while the pigments do not crowd (from memory).</remarks>
    public TurbidAmount Plus(TurbidAmount other) => new(Absorption + other.Absorption, Scatter + other.Scatter);

    /// <summary>The same film, <paramref name="factor"/> times as thick.</summary>
    /// <param name="factor">0 or more.</param>
    /// <exception cref="ArgumentException">The factor is NaN or under 0.</exception>
    public TurbidAmount Times(double factor) => new(Absorption * factor, Scatter * factor);

    private static double NotNegative(double value, string name, string parameter) => value >= 0 && double.IsFinite(value)
        ? value
        : throw new ArgumentException(Invariant($"{name} times thickness: found {value}; wanted 0 or more."), parameter);
}
