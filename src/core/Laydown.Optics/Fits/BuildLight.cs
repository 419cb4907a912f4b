using Laydown.Colour.Readings;
using Laydown.Colour.Spectra;
using Laydown.Optics.Looks;

namespace Laydown.Optics.Fits;

/// <summary>What an instrument sees of a build: the same model of light that looks are drawn with, so that fitted inks look as they were read.</summary>
/// <param name="sheet">The bare sheet.</param>
/// <param name="backings">What reflectance was read over.</param>
/// <param name="inks">Inks by name, one full laydown each.</param>
internal sealed class BuildLight(LookSheet sheet, Backings backings, IReadOnlyDictionary<string, LookInk> inks)
{
    private const double Even = 1e-4;
    private readonly Dictionary<string, StackOptics[]> stacks = new(StringComparer.Ordinal);

    /// <summary>Fills 36 bands of reflectance or transmittance.</summary>
    /// <param name="acting">What acts at the patch.</param>
    /// <param name="behind">What stands behind.</param>
    /// <param name="seen">Receives 36 values.</param>
    internal void Seen(OpticsBuild acting, Behind behind, Span<double> seen)
    {
        StackOptics[] optics = Stacks(acting, behind);
        double[] coverages = [.. acting.Under.Select(i => i.Share), .. acting.White > 0 ? (double[])[acting.White] : [],
            .. acting.Over.Select(i => i.Share)];
        Span<double> other = stackalloc double[Bands.Count];
        if (behind == Behind.Lamp)
            optics[0].Solve(coverages, other, seen);
        else if (optics.Length == 1)
            optics[0].Solve(coverages, seen, other);
        else
            Between(optics, coverages, behind == Behind.White ? backings.White : backings.Black, seen);
    }

    // The backing differs from band to band: reflectance is smooth in it, and a parabola through three backings misses by under 1e-6.
    private static void Between(StackOptics[] optics, double[] coverages, IReadOnlyList<double> backing, Span<double> seen)
    {
        Span<double> low = stackalloc double[Bands.Count], mid = stackalloc double[Bands.Count], high = stackalloc double[Bands.Count];
        Span<double> through = stackalloc double[Bands.Count];
        optics[0].Solve(coverages, low, through);
        optics[1].Solve(coverages, mid, through);
        optics[2].Solve(coverages, high, through);
        for (int band = 0; band < Bands.Count; band++)
        {
            double at = (backing[band] - optics[0].Backing) / (optics[2].Backing - optics[0].Backing);
            seen[band] = (low[band] * (1 - at) * (1 - (2 * at))) + (mid[band] * 4 * at * (1 - at)) + (high[band] * at * ((2 * at) - 1));
        }
    }

    private StackOptics[] Stacks(OpticsBuild build, Behind behind)
    {
        string key = Invariant($"{behind}:{string.Join('+', build.Under.Select(i => i.Ink))}|{(build.White > 0 ? 1 : 0)}|{string.Join('+', build.Over.Select(i => i.Ink))}");
        if (!stacks.TryGetValue(key, out StackOptics[]? found))
            stacks[key] = found = [.. BackingsOf(behind).Select(backing => new StackOptics(sheet, [.. Layers(build)], backing))];
        return found;
    }

    private double[] BackingsOf(Behind behind)
    {
        if (behind == Behind.Lamp)
            return [0];
        IReadOnlyList<double> backing = behind == Behind.White ? backings.White : backings.Black;
        (double low, double high) = (backing.Min(), backing.Max());
        return high - low < Even ? [(low + high) / 2] : [low, (low + high) / 2, high];
    }

    private IEnumerable<LookLayer> Layers(OpticsBuild build)
    {
        if (build.Under.Count > 0)
            yield return new(LookFace.First, [.. build.Under.Select(i => inks[i.Ink])]);
        if (build.White > 0)
            yield return new(LookFace.First, [inks[OpticsBuild.WhiteName]]);
        if (build.Over.Count > 0)
            yield return new(LookFace.First, [.. build.Over.Select(i => inks[i.Ink])]);
    }
}
