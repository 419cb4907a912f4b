using Laydown.Colour.Readings;
using Laydown.Colour.Spectra;
using Laydown.Optics.Looks;

namespace Laydown.Optics.Fits;

/// <summary>Finds K, S and the laydown of every patch of one ink from all its readings at once, other inks being known.</summary>
/// <remarks>
/// Least squares by Levenberg and Marquardt [Marquardt1963]; each patch has one laydown for all its readings, so that what the press laid
/// down unevenly does not pass for noise of the instrument. Slopes by small differences. A reading counts by its noise: 0.0008 + 0.5 % of
/// its value, added as squares (common practice, no source).
/// </remarks>
internal sealed class InkSolve
{
    private const int MostRounds = 80;
    private const double LeastScatter = 1e-4, NoiseFloor = 0.0008, NoiseShare = 0.005, Small = 1e-4;
    private readonly Func<LookInk, BuildLight> light;
    private readonly OpticsReading[] readings;
    private readonly OpticsBuild[] builds;
    private readonly string ink;
    private readonly bool scatters, absorbsOnly;
    private readonly int[] patchOf;
    private readonly double[] fixedShare;
    private readonly bool[] isFull;
    private double[] k, s, y;

    /// <summary>A fit about to start.</summary>
    /// <param name="ink">The ink.</param>
    /// <param name="scatters">Whether it is a white.</param>
    /// <param name="freeScatter">Whether S is sought.</param>
    /// <param name="readings">Readings with this ink.</param>
    /// <param name="acting">What acts of the inks already known.</param>
    /// <param name="light">The model for one full laydown of this ink.</param>
    /// <param name="startK">First guess of K.</param>
    /// <param name="startS">First guess of S.</param>
    internal InkSolve(
        string ink, bool scatters, bool freeScatter, IReadOnlyList<OpticsReading> readings, Func<InkShare, double> acting, Func<LookInk, BuildLight> light,
        double[] startK, double[] startS)
    {
        (this.ink, this.scatters, absorbsOnly, this.light, this.readings) = (ink, scatters, !freeScatter, light, [.. readings]);
        builds = [.. readings.Select(r => r.Build.With(i => i.Ink == ink ? i.Share : acting(i)))];

        // Full laydown of a colour covers the patch; of a white it is as thick as the mean of the full patches.
        double[] asked = [.. readings.Select(r => Asked(r.Build))];
        List<string> free = [.. readings.Where((_, i) => scatters || asked[i] < 1).Select(r => r.Id).Distinct(StringComparer.Ordinal)];
        patchOf = [.. readings.Select(r => free.IndexOf(r.Id))];
        isFull = [.. free.Select(id => scatters && asked[Array.FindIndex(this.readings, r => r.Id == id)] == 1)];
        fixedShare = asked;
        (k, s) = ([.. startK], [.. startS]);
        y = [.. free.Select(id => asked[Array.FindIndex(this.readings, r => r.Id == id)])];
    }

    /// <summary>Sum of squared weighted residuals where the fit ended.</summary>
    internal double SumOfSquares { get; private set; }

    /// <summary>K·X found.</summary>
    internal IReadOnlyList<double> Absorption => k;

    /// <summary>S·X found.</summary>
    internal IReadOnlyList<double> Scatter => s;

    /// <summary>How much more light comes back over black than the fit says, mean of bands and readings on the bare sheet; 0 where none was
    /// read.</summary>
    internal double OverBlackMissing()
    {
        int[] black = [.. Enumerable.Range(0, readings.Length).Where(i => readings[i].Behind == Behind.Black && readings[i].Build.White == 0)];
        if (black.Length == 0)
            return 0;
        double[][] seen = Seen(light(Ink(k, s)), y, 0);
        return black.Average(i => Enumerable.Range(0, Bands.Count).Average(band => readings[i].Values[band] - seen[i][band]));
    }

    /// <summary>Goes on until the sum of squares no longer falls.</summary>
    internal InkSolve Run(CancellationToken cancellation)
    {
        double damping = 1e-3;
        SumOfSquares = Squares(k, s, y);
        for (int round = 0; round < MostRounds && damping < 1e10; round++)
        {
            cancellation.ThrowIfCancellationRequested();
            BandEquations equations = Equations();
            double before = SumOfSquares;
            while (damping < 1e10 && !Step(equations, damping))
                damping *= 8;
            damping = Math.Max(1e-12, damping / 8);
            if (before - SumOfSquares <= 1e-11 * before)
                break;
        }

        return this;
    }

    /// <summary>The ink as found, with standard errors.</summary>
    internal FittedInk Result()
    {
        double[] errorK = new double[Bands.Count], errorS = new double[Bands.Count];
        BandEquations equations = Equations();
        int unknowns = (Bands.Count * (absorbsOnly ? 1 : 2)) + y.Length;
        double scale = SumOfSquares / Math.Max(1, (readings.Length * Bands.Count) - unknowns);
        if (!equations.Variances(errorK, errorS))
            Array.Fill(errorK, double.PositiveInfinity);

        // What the full patches differ among themselves stays in the thickness that K and S are given for.
        double uneven = Uneven();
        for (int band = 0; band < Bands.Count; band++)
        {
            errorK[band] = Math.Sqrt((errorK[band] * scale) + Squared(uneven * k[band]));
            errorS[band] = absorbsOnly ? 0 : Math.Sqrt((errorS[band] * scale) + Squared(uneven * s[band]));
        }

        (double[] asked, double[] acts) = Curve();
        return new(ink, [.. k], [.. s], errorK, errorS, asked, acts, Count(Behind.Black), Count(Behind.White), Count(Behind.Lamp));
    }

    private int Count(Behind behind) => readings.Count(r => r.Behind == behind);

    private double Asked(OpticsBuild build) => ink == OpticsBuild.WhiteName
        ? build.White
        : build.Over.Concat(build.Under).First(i => i.Ink == ink).Share;

    // Repeats of every step tell how unevenly the press lays down; the full patches' mean is off by that over the root of their number.
    private double Uneven()
    {
        double squares = 0;
        int free = 0, full = isFull.Count(f => f);
        foreach (int[] step in readings.Select((_, i) => (Patch: patchOf[i], Asked: Math.Round(fixedShare[i], 4))).Where(p => p.Patch >= 0).Distinct()
            .GroupBy(p => p.Asked, p => p.Patch).Select(g => g.ToArray()).Where(g => g.Length > 1))
        {
            double mean = step.Average(p => y[p]);
            squares += mean > 0 ? step.Sum(p => Squared((y[p] / mean) - 1)) : 0;
            free += step.Length - 1;
        }

        return free == 0 || full == 0 ? 0 : Math.Sqrt(squares / free / full);
    }

    // Steps asked → mean of what acts, never falling, 0 to 1.
    private (double[] Asked, double[] Acting) Curve()
    {
        var steps = readings.Select((r, i) => (Asked: Math.Round(fixedShare[i], 4), Patch: patchOf[i]))
            .Where(p => p.Patch >= 0 && p.Asked < 1).Distinct().GroupBy(p => p.Asked).OrderBy(g => g.Key)
            .Select(g => (g.Key, Mean: g.Average(p => y[p.Patch]), Weight: (double)g.Count())).ToArray();
        double[] acting = [.. steps.Select(g => Math.Clamp(g.Mean, 0, 1))];
        foreach ((int first, int last, double value) in Laydown.Colour.Calibration.IsotonicSteps.Pools(acting, [.. steps.Select(g => g.Weight)]).ToArray())
            Array.Fill(acting, value, first, last - first + 1);
        return ([0, .. steps.Select(g => g.Key), 1], [0, .. acting, 1]);
    }

    private bool Step(BandEquations equations, double damping)
    {
        double[] dk = new double[Bands.Count], ds = new double[Bands.Count], dy = new double[y.Length];
        if (!equations.Solve(damping, y, dk, ds, dy))
            return false;
        double[] nextK = [.. k.Select((v, i) => Math.Clamp(v + dk[i], 0, 100))];
        double[] nextS = [.. s.Select((v, i) => absorbsOnly ? v : Math.Clamp(v + ds[i], scatters ? Math.Max(LeastScatter, v / 3) : 0, 100))];
        double[] nextY = [.. y.Select((v, i) => Math.Clamp(v + dy[i], 0, scatters ? 2 : 1))];
        double squares = Squares(nextK, nextS, nextY);
        if (!(squares < SumOfSquares))
            return false;
        (k, s, y, SumOfSquares) = (nextK, nextS, nextY, squares);
        return true;
    }

    private double Squares(double[] atK, double[] atS, double[] atY)
    {
        double[][] seen = Seen(light(Ink(atK, atS)), atY, 0);
        double sum = 0;
        for (int i = 0; i < seen.Length; i++)
        {
            for (int band = 0; band < Bands.Count; band++)
                sum += Squared((readings[i].Values[band] - seen[i][band]) / Noise(readings[i].Values[band]));
        }

        double mean = isFull.Contains(true) ? atY.Where((_, i) => isFull[i]).Average() : 1;
        return sum + (1e8 * Squared(mean - 1));
    }

    private BandEquations Equations()
    {
        double[] stepK = [.. k.Select(v => Small * (1 + v))], stepS = [.. s.Select(v => Small * (1 + v))];
        BuildLight here = light(Ink(k, s));
        double[][] seen = Seen(here, y, 0), moreY = Seen(here, y, Small);
        double[][] moreK = Seen(light(Ink([.. k.Select((v, i) => v + stepK[i])], s)), y, 0);
        double[][] moreS = absorbsOnly ? seen : Seen(light(Ink(k, [.. s.Select((v, i) => v + stepS[i])])), y, 0);
        BandEquations equations = new(isFull);
        for (int i = 0; i < readings.Length; i++)
        {
            for (int band = 0; band < Bands.Count; band++)
            {
                double weight = 1 / Noise(readings[i].Values[band]), at = seen[i][band];
                equations.Add(band, patchOf[i], (moreK[i][band] - at) / stepK[band] * weight, (moreS[i][band] - at) / stepS[band] * weight,
                    (moreY[i][band] - at) / Small * weight, (readings[i].Values[band] - at) * weight);
            }
        }

        for (int band = 0; band < Bands.Count; band++)
        {
            equations.HeldK[band] = k[band] <= 0 && equations.FallK[band] <= 0;
            equations.HeldS[band] = absorbsOnly || (s[band] <= (scatters ? LeastScatter : 0) && equations.FallS[band] <= 0);
        }

        return equations;
    }

    private double[][] Seen(BuildLight with, double[] atY, double more)
    {
        double[][] seen = new double[readings.Length][];
        for (int i = 0; i < readings.Length; i++)
        {
            double share = (patchOf[i] < 0 ? fixedShare[i] : atY[patchOf[i]]) + more;
            seen[i] = new double[Bands.Count];
            with.Seen(builds[i].With(part => part.Ink == ink ? share : part.Share), readings[i].Behind, seen[i]);
        }

        return seen;
    }

    private LookInk Ink(double[] atK, double[] atS) => InkLook.Of(scatters, atK, atS);

    private static double Noise(double value) => Math.Sqrt(Squared(NoiseFloor) + Squared(NoiseShare * value));

    private static double Squared(double value) => value * value;
}
