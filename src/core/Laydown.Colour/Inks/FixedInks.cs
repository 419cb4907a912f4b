using Laydown.Colour.Spaces;

namespace Laydown.Colour.Inks;

/// <summary>A model with some of its inks left out: what the print looks like with the others alone.</summary>
public sealed class FixedInks : IInkModel
{
    private readonly IInkModel whole;
    private readonly int[] used;

    /// <summary>The print with some inks only.</summary>
    /// <param name="whole">The print with all inks.</param>
    /// <param name="used">Which inks are used, in the order wanted.</param>
    /// <exception cref="ArgumentException">An ink does not exist or stands twice.</exception>
    public FixedInks(IInkModel whole, IReadOnlyList<int> used)
    {
        if (used.Any(i => i < 0 || i >= whole.Inks) || used.Distinct().Count() != used.Count)
            throw new ArgumentException(Invariant($"Inks {string.Join(", ", used)}: wanted each once, 0 to {whole.Inks - 1}."), nameof(used));
        (this.whole, this.used) = (whole, [.. used]);
    }

    /// <inheritdoc/>
    public int Inks => used.Length;

    /// <inheritdoc/>
    public Xyz White => whole.White;

    /// <inheritdoc/>
    public Xyz ToXyz(ReadOnlySpan<double> coverages)
    {
        Span<double> all = stackalloc double[whole.Inks];
        Spread(coverages, all);
        return whole.ToXyz(all);
    }

    /// <inheritdoc/>
    public Xyz ToXyz(ReadOnlySpan<double> coverages, Span<Xyz> slopes)
    {
        Span<double> all = stackalloc double[whole.Inks];
        Span<Xyz> allSlopes = stackalloc Xyz[whole.Inks];
        Spread(coverages, all);
        Xyz colour = whole.ToXyz(all, allSlopes);
        for (int i = 0; i < used.Length; i++)
            slopes[i] = allSlopes[used[i]];
        return colour;
    }

    private void Spread(ReadOnlySpan<double> coverages, Span<double> all)
    {
        if (coverages.Length != used.Length)
            throw new ArgumentException(Invariant($"{coverages.Length} coverages: wanted {used.Length}."), nameof(coverages));
        all.Clear();
        for (int i = 0; i < used.Length; i++)
            all[used[i]] = coverages[i];
    }
}
