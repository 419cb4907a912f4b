using System.Runtime.Intrinsics;
using Laydown.Colour.Spectra;
using Laydown.Optics.Layers;
using V = System.Runtime.Intrinsics.Vector256<float>;

namespace Laydown.Optics.Looks;

/// <summary>The fast way of <see cref="TurbidHalftone"/>: for n = 1 the overprints of eight bands summed at once; any other n goes the
/// plain way, band by band.</summary>
internal sealed class RowHalftone
{
    private readonly IReadOnlyList<TurbidHalftone> bands;
    private readonly float[] reflectance, transmittance;
    private readonly int padded;
    private readonly bool summed;

    internal RowHalftone(IReadOnlyList<TurbidHalftone> bands, int padded)
    {
        (this.bands, this.padded) = (bands, padded);
        summed = bands[0].YuleNielsen == 1;
        reflectance = Table(slice => slice.FrontReflectance);
        transmittance = Table(slice => slice.Inward);
    }

    /// <summary>Reflectance and transmittance of a block of bands; lanes past the last band hold nothing that counts.</summary>
    internal (V Reflectance, V Transmittance) At(ReadOnlySpan<byte> spot, int block) => summed ? Summed(spot, block) : Plain(spot, block);

    private (V Reflectance, V Transmittance) Summed(ReadOnlySpan<byte> spot, int block)
    {
        Span<float> shares = stackalloc float[1 << spot.Length];
        shares[0] = 1;
        for (int ink = 0, filled = 1; ink < spot.Length; ink++, filled *= 2)
        {
            float with = spot[ink] / 255f;
            for (int j = 0; j < filled; j++)
                (shares[j], shares[j + filled]) = (shares[j] * (1 - with), shares[j] * with);
        }

        V r = V.Zero, t = V.Zero;
        for (int j = 0; j < shares.Length; j++)
        {
            if (shares[j] == 0)
                continue;
            r += shares[j] * Vector256.Create<float>(reflectance.AsSpan((j * padded) + block));
            t += shares[j] * Vector256.Create<float>(transmittance.AsSpan((j * padded) + block));
        }

        return (r, t);
    }

    private (V Reflectance, V Transmittance) Plain(ReadOnlySpan<byte> spot, int block)
    {
        Span<double> coverages = stackalloc double[spot.Length];
        for (int ink = 0; ink < spot.Length; ink++)
            coverages[ink] = spot[ink] / 255.0;
        V r = V.Zero, t = V.Zero;
        for (int lane = 0; lane < V.Count && block + lane < Bands.Count; lane++)
        {
            LayerLight light = bands[block + lane].Layer(coverages);
            r = r.WithElement(lane, (float)light.FrontReflectance);
            t = t.WithElement(lane, (float)light.Inward);
        }

        return (r, t);
    }

    private float[] Table(Func<LayerLight, double> value)
    {
        float[] table = new float[bands[0].Slices.Count * padded];
        for (int band = 0; band < bands.Count; band++)
        {
            for (int j = 0; j < bands[band].Slices.Count; j++)
                table[(j * padded) + band] = (float)value(bands[band].Slices[j]);
        }

        return table;
    }
}
