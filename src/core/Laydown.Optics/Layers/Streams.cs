namespace Laydown.Optics.Layers;

/// <summary>The directions in which light is followed inside a medium: those that no face lets out, those inside the cone that the air
/// sees, straight on, and one at 45° in air that is only watched.</summary>
/// <remarks>
/// Gauss nodes in the cosine inside below the limit of total reflection; Gauss–Radau nodes in the cosine in air above it, in which
/// Fresnel's formulas are smooth, the last of them straight on. The watched direction has weight 0: it takes part in nothing.
/// </remarks>
internal sealed class Streams
{
    internal Streams(Boundary surface, int perRange)
    {
        Surface = surface;
        double squared = surface.Index * surface.Index, limit = Math.Sqrt(1 - (1 / squared));
        List<(double Inside, double Air, double Weight)> nodes = [];
        if (surface.Index > 1)
        {
            foreach ((double x, double w) in Quadrature.Gauss(perRange))
                nodes.Add((limit * x, double.NaN, limit * w));
        }

        foreach ((double x, double w) in Quadrature.RadauToOne(perRange))
        {
            double inside = Math.Sqrt(1 - ((1 - (x * x)) / squared));
            nodes.Add((inside, x, x * w / (squared * inside)));
        }

        Straight = nodes.Count - 1;
        nodes.Add((Math.Sqrt(1 - (0.5 / squared)), Math.Sqrt(0.5), 0));
        Cosines = [.. nodes.Select(n => n.Inside)];
        Weights = [.. nodes.Select(n => n.Weight)];
        Face = [.. nodes.Select(n => double.IsNaN(n.Air) ? 1 : surface.AtSine(Math.Sqrt(1 - (n.Air * n.Air))))];
    }

    internal Boundary Surface { get; }

    internal int Count => Cosines.Length;

    /// <summary>Place of the direction straight on.</summary>
    internal int Straight { get; }

    /// <summary>Place of the direction that is 45° in air.</summary>
    internal int At45 => Count - 1;

    /// <summary>Cosines inside the medium.</summary>
    internal double[] Cosines { get; }

    /// <summary>Weights of an integral over the cosine inside.</summary>
    internal double[] Weights { get; }

    /// <summary>What the face sends back of each direction, 0 to 1.</summary>
    internal double[] Face { get; }

    /// <summary>Light in all directions of one half as a flux, 1 for an even radiance of 1.</summary>
    internal double Flux(ReadOnlySpan<double> radiance)
    {
        double sum = 0;
        for (int i = 0; i < Count; i++)
            sum += 2 * Cosines[i] * Weights[i] * radiance[i];
        return sum;
    }

    /// <summary>Radiance inside that diffuse light of flux 1 makes when it comes in.</summary>
    internal double[] Diffuse() => [.. Face.Select(r => (1 - r) * Surface.Index * Surface.Index)];

    /// <summary>Radiance inside that straight light of flux 1 makes when it comes in.</summary>
    internal double[] Normal()
    {
        double[] light = new double[Count];
        light[Straight] = (1 - Face[Straight]) / (2 * Weights[Straight]);
        return light;
    }

    /// <summary>Radiance as it leaves through the face, before it widens in air.</summary>
    internal double[] Leaving(ReadOnlySpan<double> radiance)
    {
        double[] left = new double[Count];
        for (int i = 0; i < Count; i++)
            left[i] = (1 - Face[i]) * radiance[i];
        return left;
    }
}
