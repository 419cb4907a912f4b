using Laydown.Colour.Gamuts;
using Laydown.Colour.Inks;
using Laydown.Colour.Spaces;
using Laydown.Measures;

namespace Laydown.Colour.Inversion;

/// <summary>Makes device links: each channel value of a picture straight to the inks of a print.</summary>
/// <remarks>
/// The exact way is: channels → colour → inks by the inverse. From CMYK the colour is that of the CMYK print, and its black is wished
/// for, so a grey made of black stays black. From RGB the picture's colours are fitted into the print first. The table holds exact
/// answers at its nodes; <see cref="Error"/> tells what lies between.
/// </remarks>
public sealed class LinkMaker
{
    private const int Channels4 = 4;
    private static readonly double[] Primes = [2, 3, 5, 7];
    private readonly InkInverse inverse;
    private readonly IInkModel? cmyk;
    private readonly PerceptualFit? fit;
    private readonly int[] sameInk;

    private LinkMaker(InkInverse inverse, IReadOnlyList<string> inkNames, IInkModel? cmyk, PerceptualFit? fit)
    {
        (this.inverse, InkNames, this.cmyk, this.fit) = (inverse, inkNames, cmyk, fit);
        sameInk = [.. new[] { "Cyan", "Magenta", "Yellow", "Black" }.Select(n => inkNames.ToList().IndexOf(n))];
    }

    /// <summary>Names of the inks that come out.</summary>
    public IReadOnlyList<string> InkNames { get; }

    /// <summary>Channels that go in.</summary>
    public int Channels => cmyk is null ? 3 : Channels4;

    /// <summary>From the CMYK of a print to all inks of the same print.</summary>
    /// <param name="inverse">Inverse of the print with all its inks.</param>
    /// <param name="inkNames">Their names.</param>
    /// <param name="cmyk">What CMYK looks like: cyan, magenta, yellow, black.</param>
    /// <exception cref="ArgumentException">The model has not four inks, or names and inverse differ in number.</exception>
    public static LinkMaker FromCmyk(InkInverse inverse, IReadOnlyList<string> inkNames, IInkModel cmyk) =>
        cmyk.Inks == Channels4 && inverse.Inks == inkNames.Count
            ? new(inverse, inkNames, cmyk, null)
            : throw new ArgumentException(Invariant($"{cmyk.Inks} inks of CMYK, {inkNames.Count} names for {inverse.Inks} inks."), nameof(cmyk));

    /// <summary>From sRGB to the inks of a print.</summary>
    /// <param name="inverse">Inverse of the print.</param>
    /// <param name="inkNames">Names of its inks.</param>
    /// <param name="print">Gamut of the print.</param>
    /// <exception cref="ArgumentException">Names and inverse differ in number.</exception>
    public static LinkMaker FromRgb(InkInverse inverse, IReadOnlyList<string> inkNames, Gamut print) =>
        inverse.Inks == inkNames.Count
            ? new(inverse, inkNames, null, new PerceptualFit(Gamut.OfSrgb(), print, ProfileTableMaker.DarkestNeutral(inverse).L))
            : throw new ArgumentException(Invariant($"{inkNames.Count} names for {inverse.Inks} inks: wanted the same."), nameof(inkNames));

    /// <summary>The exact inks for channel values.</summary>
    /// <param name="channels">0 to 1 each.</param>
    /// <param name="inks">Start of the search where the first is not under 0; receives the inks.</param>
    public Separated Exact(ReadOnlySpan<double> channels, Span<double> inks)
    {
        Lab colour = ColourOf(channels);
        if (inks[0] < 0)
            Start(channels, colour, inks);
        Separated found = cmyk is null
            ? inverse.Solve(colour, inks, [.. inverse.EverywhereStarts])
            : inverse.SolveKeeping(colour, channels[3], inks);
        for (int ink = 0; ink < inks.Length; ink++)
            inks[ink] = inks[ink] < 5e-5 ? 0 : inks[ink];
        return found;
    }

    /// <summary>Fills a table.</summary>
    /// <param name="steps">Nodes along each channel, 2 to 33.</param>
    /// <param name="bend">Exponent of the curve before the table: over 1 puts nodes closer near 0.</param>
    /// <param name="progress">Told the share done; may be null.</param>
    /// <param name="cancellation">Looked at before each slice.</param>
    public LinkTables Make(int steps, double bend, IProgress<double>? progress, CancellationToken cancellation)
    {
        Bounds.Within(steps, 2, 33);
        Bounds.Within(bend, 0.3, 3);
        int inks = inverse.Inks, slice = (int)Math.Pow(steps, Channels - 1), done = 0;
        float[] table = new float[slice * steps * inks];
        Parallel.For(0, steps, new ParallelOptions { CancellationToken = cancellation }, first =>
        {
            double[] channels = new double[Channels], found = new double[inks];
            for (int node = slice - 1; node >= 0; node--)
            {
                for (int channel = Channels - 1, rest = (first * slice) + node; channel >= 0; channel--, rest /= steps)
                    channels[channel] = Math.Pow(rest % steps / (double)(steps - 1), bend);

                // A node begins where its neighbour ended; CMYK begins with its own inks.
                if (cmyk is not null || node == slice - 1)
                    found[0] = -1;
                Exact(channels, found);
                for (int ink = 0; ink < inks; ink++)
                    table[((((first * slice) + node) * inks) + ink)] = (float)Math.Min(found[ink], inverse.Limits.PerInk[ink]);
            }

            progress?.Report(Interlocked.Increment(ref done) / (double)steps);
        });
        float[] curve = [.. Enumerable.Range(0, 257).Select(i => (float)Math.Pow(i / 256.0, 1 / bend))];
        return new(Channels, InkNames, [.. Enumerable.Repeat<IReadOnlyList<float>>(curve, Channels)], steps, table);
    }

    /// <summary>How far the table's colours lie from the exact way's, ΔE00, at scattered channel values.</summary>
    /// <param name="table">A table of this maker.</param>
    /// <param name="samples">Number of values, at least 1.</param>
    public IReadOnlyList<double> Error(LinkTables table, int samples)
    {
        LinkReader reader = new(table);
        double[] errors = new double[Bounds.Within(samples, 1, 1_000_000)];
        Parallel.For(0, samples, sample =>
        {
            double[] channels = new double[Channels], read = new double[inverse.Inks], exact = new double[inverse.Inks];
            for (int channel = 0; channel < Channels; channel++)
            {
                // Multiples of irrational numbers that do not depend on each other fill the cube evenly, the same each time.
                double part = (sample + 1) * Math.Sqrt(Primes[channel]);
                channels[channel] = part - Math.Floor(part);
            }

            exact[0] = -1;
            Exact(channels, exact);
            reader.Read(channels, read);
            errors[sample] = Ciede2000.Between(inverse.Predict(read), inverse.Predict(exact));
        });
        return errors;
    }

    private Lab ColourOf(ReadOnlySpan<double> channels) => cmyk is not null
        ? Lab.From(cmyk.ToXyz(channels), cmyk.White)
        : fit!.Map(Srgb.ToLab(channels[0], channels[1], channels[2]));

    private void Start(ReadOnlySpan<double> channels, Lab colour, Span<double> inks)
    {
        inks.Fill(cmyk is null ? 0.2 : 0);
        for (int channel = 0; channel < Channels4 && cmyk is not null; channel++)
        {
            if (sameInk[channel] >= 0)
                inks[sameInk[channel]] = channels[channel];
        }

        if (cmyk is not null)
            inverse.Wishes.ShareDemand(colour.L, inks);
    }
}
