namespace Laydown.Optics.Layers;

/// <summary>What a layer does with light of every direction: <see cref="LayerLight"/> with a matrix in place of each share.</summary>
internal sealed record StreamLayer(StreamMatrix FrontReflectance, StreamMatrix BackReflectance, StreamMatrix Inward, StreamMatrix Outward)
{
    // The thinnest slice is this thin against the most grazing direction; the error of a slice falls with the third power.
    private const double SliceAgainstGrazing = 0.02;

    /// <summary>A slab of even matter without faces, by doubling of a thin slice [Plass1973].</summary>
    internal static StreamLayer Of(SlabMatter matter, Streams streams)
    {
        // The peak straight ahead counts as light that met nothing, so that few directions are enough [Wiscombe1977].
        int terms = streams.Count - 1;
        double peak = Math.Pow(matter.Asymmetry, terms);
        double thickness = matter.OpticalThickness * (1 - (matter.Albedo * peak));
        double albedo = matter.Albedo * (1 - peak) / (1 - (matter.Albedo * peak));
        int doublings = Math.Max(0, (int)Math.Ceiling(Math.Log2(Math.Max(thickness, 1e-300) / (SliceAgainstGrazing * streams.Cosines[0]))));
        (StreamMatrix forward, StreamMatrix backward) = Phase(matter.Asymmetry, peak, terms, streams);
        StreamLayer slab = Slice(Math.ScaleB(thickness, -doublings), albedo, forward, backward, streams);
        for (int i = 0; i < doublings; i++)
            slab = slab.Over(slab);
        return slab;
    }

    /// <summary>This layer laid over another, with all light that goes to and fro [Kubelka1954], direction by direction.</summary>
    internal StreamLayer Over(StreamLayer lower)
    {
        StreamMatrix one = StreamMatrix.One(Inward.Size);
        StreamMatrix down = (one - (BackReflectance * lower.FrontReflectance)).Inverse() * Inward;
        StreamMatrix up = (one - (lower.FrontReflectance * BackReflectance)).Inverse() * lower.Outward;
        return new(
            FrontReflectance + (Outward * (lower.FrontReflectance * down)),
            lower.BackReflectance + (lower.Inward * (BackReflectance * up)),
            lower.Inward * down,
            Outward * up);
    }

    // μ dI/dτ = −I + (ω/2) Σ p I w over a slice, both ends' mean taken inside it: C = (1 + A)⁻¹B, G = (1 + A − BC)⁻¹, T = 2G − 1, R = 2CG.
    private static StreamLayer Slice(double thickness, double albedo, StreamMatrix forward, StreamMatrix backward, Streams streams)
    {
        StreamMatrix one = StreamMatrix.One(streams.Count), a = new(streams.Count), b = new(streams.Count);
        for (int to = 0; to < streams.Count; to++)
        {
            double path = thickness / 2 / streams.Cosines[to];
            for (int from = 0; from < streams.Count; from++)
            {
                double share = albedo / 2 * streams.Weights[from];
                a[to, from] = path * ((to == from ? 1 : 0) - (share * forward[to, from]));
                b[to, from] = path * share * backward[to, from];
            }
        }

        StreamMatrix c = (one + a).Inverse() * b;
        StreamMatrix g = (one + a - (b * c)).Inverse();
        StreamMatrix reflectance = (c * g).Times(2), transmittance = g.Times(2) - one;
        return new(reflectance, reflectance, transmittance, transmittance);
    }

    // Σ (2l + 1) χ_l P_l(μ) P_l(±μ'), χ_l = (g^l − peak)/(1 − peak) [Henyey1941].
    private static (StreamMatrix Forward, StreamMatrix Backward) Phase(double asymmetry, double peak, int terms, Streams streams)
    {
        StreamMatrix forward = new(streams.Count), backward = new(streams.Count);
        double[][] p = [.. streams.Cosines.Select(c => Quadrature.Polynomials(terms, c))];
        for (int to = 0; to < streams.Count; to++)
        {
            for (int from = 0; from < streams.Count; from++)
            {
                double power = 1;
                for (int l = 0; l < terms; l++, power *= asymmetry)
                {
                    double part = ((2 * l) + 1) * (power - peak) / (1 - peak) * p[to][l] * p[from][l];
                    forward[to, from] += part;
                    backward[to, from] += l % 2 == 0 ? part : -part;
                }
            }
        }

        return (forward, backward);
    }
}
