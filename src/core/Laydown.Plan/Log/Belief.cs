namespace Laydown.Plan.Log;

/// <summary>What is believed of a value: a normal curve kept as its precision and precision × mean, so that independent beliefs are added. <c>default</c> knows nothing.</summary>
/// <param name="Precision">1 / variance; 0 knows nothing.</param>
/// <param name="Weighted">Precision × mean.</param>
internal readonly record struct Belief(double Precision, double Weighted)
{
    /// <summary>The mean; 0 where nothing is known.</summary>
    public double Mean => Precision > 0 ? Weighted / Precision : 0;

    /// <summary>The variance.</summary>
    public double Variance => 1 / Precision;

    /// <summary>A belief of this mean and variance, over 0.</summary>
    public static Belief Of(double mean, double variance) => new(1 / variance, mean / variance);

    /// <summary>Both together.</summary>
    public static Belief operator +(Belief one, Belief other) => new(one.Precision + other.Precision, one.Weighted + other.Weighted);

    /// <summary>What this tells of a value that differs from it by a further variance.</summary>
    public Belief Widened(double variance) => Precision > 0 ? Of(Mean, Variance + variance) : default;
}
