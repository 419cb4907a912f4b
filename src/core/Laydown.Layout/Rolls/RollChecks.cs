using Laydown.Measures;

namespace Laydown.Layout.Rolls;

/// <summary>Stops rolls that cannot be reckoned with, and lists what may lie on the press.</summary>
internal static class RollChecks
{
    internal static void Demand(IReadOnlyList<RollStock> stocks, RollTerms terms)
    {
        ArgumentNullException.ThrowIfNull(terms);
        Bounds.NotEmpty(stocks);
        Bounds.Within(terms.GapMm, 0, 1000, nameof(terms));
        Bounds.Within(terms.LeadInMm, 0, 100_000, nameof(terms));
        Bounds.Within(terms.LeadOutMm, 0, 100_000, nameof(terms));
        Bounds.Within(terms.LeastSectionMm, 0, 100_000, nameof(terms));
        Bounds.Within(terms.LongestSectionMm, 0, 1_000_000, nameof(terms));
        Bounds.Within(terms.SideBySide, 1, 2, nameof(terms));
        Bounds.Within(terms.CentreGapMm, 0, 10_000, nameof(terms));
        Bounds.Within(terms.PricePerMetre, 0, 1_000_000, nameof(terms));
        if (terms.LongestSectionMm > 0 && terms.LongestSectionMm < terms.LeastSectionMm)
            throw new ArgumentException(Invariant($"Longest section: found {terms.LongestSectionMm} mm; wanted at least the least, {terms.LeastSectionMm} mm."), nameof(terms));
        if (stocks.Select(s => s.Id).Distinct(StringComparer.Ordinal).Count() < stocks.Count)
            throw new ArgumentException("Rolls: found one id twice; wanted each id once.", nameof(stocks));

        foreach (RollStock stock in stocks)
            Demand(stock, terms);
    }

    /// <summary>Whether the press takes one of the rolls, or a pair of them where two are wanted.</summary>
    internal static bool HasChoice(IReadOnlyList<RollStock> stocks, RollTerms terms) => Taken(stocks, terms).Count > 0;

    /// <summary>The rolls, or pairs of rolls, that the press takes.</summary>
    /// <exception cref="ArgumentException">It takes none.</exception>
    internal static IReadOnlyList<IReadOnlyList<RollStock>> Choices(IReadOnlyList<RollStock> stocks, RollTerms terms) => Taken(stocks, terms) is { Count: > 0 } taken
        ? taken
        : throw new ArgumentException(
            Invariant($"Rolls: found {string.Join(", ", stocks.Select(s => Invariant($"{s.Id} {s.WidthMm:0.##} mm")))}; wanted {(terms.SideBySide == 1 ? "one" : "two")} within {terms.AcrossMm:0.##} mm."),
            nameof(stocks));

    private static IReadOnlyList<IReadOnlyList<RollStock>> Taken(IReadOnlyList<RollStock> stocks, RollTerms terms)
    {
        IEnumerable<IReadOnlyList<RollStock>> choices = terms.SideBySide == 1
            ? stocks.Select(s => (IReadOnlyList<RollStock>)[s])
            : from i in Enumerable.Range(0, stocks.Count)
              from j in Enumerable.Range(i, stocks.Count - i)
              where i != j || stocks[i].Rolls > 1
              select (IReadOnlyList<RollStock>)[stocks[i], stocks[j]];
        return [.. choices.Where(c => c.Sum(s => s.WidthMm) + ((c.Count - 1) * terms.CentreGapMm) <= terms.AcrossMm + 1e-6)];
    }

    private static void Demand(RollStock stock, RollTerms terms)
    {
        Bounds.Within(stock.EdgeMarginMm, 0, 10_000, nameof(stock));
        Bounds.Within(stock.PricePerM2, 0, 1_000_000, nameof(stock));
        Bounds.Within(stock.Rolls, 1, 10_000, nameof(stock));
        Bounds.Within(stock.WidthMm - (2 * stock.EdgeMarginMm), 1, 1_000_000, nameof(stock));
        Bounds.Within(stock.LengthMm - terms.LeadInMm - terms.LeadOutMm, 1, 1_000_000, nameof(stock));
    }
}
