using Laydown.Measures;

namespace Laydown.Optics.Layers;

/// <summary>A smooth boundary between air and a clear medium, by Fresnel's formulas for unpolarised light [Judd1942].</summary>
public sealed class Boundary
{
    private const int QuadratureSteps = 4000;

    /// <summary>A boundary.</summary>
    /// <param name="index">Refractive index of the medium, 1 to 3.</param>
    /// <exception cref="ArgumentOutOfRangeException">The index is NaN or outside its range.</exception>
    public Boundary(double index)
    {
        Index = Bounds.Within(index, 1, 3);
        Normal = AtSine(0);
        At45 = AtSine(Math.Sqrt(0.5));
        DiffuseOutside = Diffuse();
        DiffuseInside = 1 - ((1 - DiffuseOutside) / (index * index));
    }

    /// <summary>Cured ink and acrylic: n = 1.5.</summary>
    public static Boundary Ink { get; } = new(1.5);

    /// <summary>Refractive index.</summary>
    public double Index { get; }

    /// <summary>Reflectance of light that falls straight on.</summary>
    public double Normal { get; }

    /// <summary>Reflectance of light that comes from the air at 45°.</summary>
    public double At45 { get; }

    /// <summary>Reflectance of diffuse light that comes from the air.</summary>
    public double DiffuseOutside { get; }

    /// <summary>Reflectance of diffuse light that comes from inside; total reflection makes it large.</summary>
    public double DiffuseInside { get; }

    /// <summary>Share of light from 45° that comes in.</summary>
    public double InFrom45 => 1 - At45;

    /// <summary>Share of diffuse light from the air that comes in.</summary>
    public double InDiffuse => 1 - DiffuseOutside;

    /// <summary>Share of diffuse light from inside that goes out.</summary>
    public double OutDiffuse => 1 - DiffuseInside;

    /// <summary>Radiance straight out over radiance of the diffuse light inside: (1 − R0)/n².</summary>
    public double OutNormal => (1 - Normal) / (Index * Index);

    /// <summary>The boundary as a layer for diffuse light, seen from the air.</summary>
    public LayerLight Layer => new(DiffuseOutside, DiffuseInside, InDiffuse, OutDiffuse);

    /// <summary>Reflectance of light from the air by the sine of its angle to the normal, 0 to 1.</summary>
    public double AtSine(double sine)
    {
        // Without a step of index nothing is sent back; at grazing angle the formulas would divide nothing by nothing.
        if (Index == 1)
            return 0;
        double cosOut = Math.Sqrt(Math.Max(0, 1 - (sine * sine)));
        double cosIn = Math.Sqrt(1 - (sine * sine / (Index * Index)));
        double s = (cosOut - (Index * cosIn)) / (cosOut + (Index * cosIn));
        double p = ((Index * cosOut) - cosIn) / ((Index * cosOut) + cosIn);
        return ((s * s) + (p * p)) / 2;
    }

    /// <summary>Mean over all directions from the air, weighted as diffuse light is: ∫ f(θ) sin 2θ dθ by Simpson's rule.</summary>
    public static double MeanOverDirections(Func<double, double> bySine)
    {
        double step = Math.PI / 2 / QuadratureSteps;
        double sum = 0;
        for (int i = 0; i <= QuadratureSteps; i++)
        {
            double angle = i * step;
            double weight = i is 0 or QuadratureSteps ? 1 : i % 2 == 1 ? 4 : 2;
            sum += weight * bySine(Math.Sin(angle)) * Math.Sin(2 * angle);
        }

        return sum * step / 3;
    }

    private double Diffuse() => MeanOverDirections(AtSine);
}
