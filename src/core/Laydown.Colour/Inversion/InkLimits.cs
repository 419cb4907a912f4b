namespace Laydown.Colour.Inversion;

/// <summary>How much ink a print condition takes, as parts of one full ink.</summary>
public sealed record InkLimits
{
    /// <summary>Limits of each ink and of their sum.</summary>
    /// <param name="perInk">Most of each ink, over 0 to 1.</param>
    /// <param name="total">Largest sum, at least the largest single limit; 2.6 stands for 260 %.</param>
    /// <exception cref="ArgumentException">A limit lies outside its range.</exception>
    public InkLimits(IReadOnlyList<double> perInk, double total)
    {
        if (perInk.Count == 0 || perInk.Any(l => !(l is > 0 and <= 1)))
            throw new ArgumentException("Ink limits: wanted at least one, each over 0 to 1.", nameof(perInk));
        if (!(total >= perInk.Max()))
            throw new ArgumentException(Invariant($"Total limit {total}: wanted at least {perInk.Max()}."), nameof(total));

        PerInk = [.. perInk];
        Total = total;
    }

    /// <summary>Most of each ink, over 0 to 1.</summary>
    public IReadOnlyList<double> PerInk { get; }

    /// <summary>Largest sum of all inks.</summary>
    public double Total { get; }

    /// <summary>Moves coverages to the nearest point inside the limits.</summary>
    /// <remarks>Nearest in the plain sense; all inks go down together by the same amount until the sum holds, none under 0.</remarks>
    public void Project(Span<double> coverages)
    {
        double sum = Clip(coverages, 0);
        if (sum <= Total)
            return;

        // The shift that brings the sum to the limit lies between 0 and 1; the sum falls steadily with it, so halve the interval.
        Span<double> trial = stackalloc double[coverages.Length];
        double low = 0, high = 1;
        for (int step = 0; step < 50; step++)
        {
            double middle = (low + high) / 2;
            coverages.CopyTo(trial);
            if (Clip(trial, middle) > Total)
                low = middle;
            else
                high = middle;
        }

        Clip(coverages, high);
    }

    private double Clip(Span<double> coverages, double shift)
    {
        double sum = 0;
        for (int ink = 0; ink < coverages.Length; ink++)
        {
            coverages[ink] = Math.Clamp(coverages[ink] - shift, 0, PerInk[ink]);
            sum += coverages[ink];
        }

        return sum;
    }
}
