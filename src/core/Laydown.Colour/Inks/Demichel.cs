namespace Laydown.Colour.Inks;

/// <summary>Shares of the overprints of independent screens: the product of the coverages of the inks that lie there and of the gaps
/// of those that do not.</summary>
internal static class Demichel
{
    /// <summary>Shares of all 2^inks overprints; their sum is 1.</summary>
    internal static void Shares(ReadOnlySpan<double> coverages, Span<double> share) => Fill(coverages, -1, share);

    /// <summary>How the shares change with one ink; their sum is 0.</summary>
    internal static void Slopes(ReadOnlySpan<double> coverages, int along, Span<double> share) => Fill(coverages, along, share);

    private static void Fill(ReadOnlySpan<double> coverages, int along, Span<double> share)
    {
        share[0] = 1;
        for (int ink = 0, filled = 1; ink < coverages.Length; ink++, filled *= 2)
        {
            double with = ink == along ? 1 : coverages[ink];
            double without = ink == along ? -1 : 1 - coverages[ink];
            for (int j = 0; j < filled; j++)
            {
                share[j + filled] = share[j] * with;
                share[j] *= without;
            }
        }
    }
}
