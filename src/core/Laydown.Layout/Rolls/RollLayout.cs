using Laydown.Layout.Search;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Rolls;

/// <summary>Lays rectangles out on one length of roll, or on two rolls side by side, as short or as cheap as can be found.</summary>
public static class RollLayout
{
    /// <summary>Fillings of each choice of rolls before the best choice is worked on.</summary>
    private const int FirstFillings = 300;

    /// <summary>Placings that one order of the old count is worth.</summary>
    private const long WorkOfAnOrder = 40_000;

    /// <summary>One long layout: the roll's width × the length used, lead-in and lead-out contained; y runs along the roll.</summary>
    /// <remarks>
    /// For edge-to-edge cutting the roll is a row of sections with a full cut between them, each cut on by a tree of cuts; for free cutting
    /// it is packed without sections. Pieces wider than the roll, and whatever the length left on the roll cannot
    /// take, come back as unplaced.
    /// </remarks>
    /// <exception cref="ArgumentException">An id comes twice, a size is not over 0, a quantity is under 1, or the margins leave nothing of the roll.</exception>
    /// <exception cref="OperationCanceledException">Cancelled; nothing is kept.</exception>
    public static LayoutResult Solve(IReadOnlyList<Piece> pieces, RollRules rules, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(rules);
        ArgumentNullException.ThrowIfNull(pieces);
        Bounds.Within(rules.Iterations, 0, 10_000_000, nameof(rules));
        RollStock stock = new("roll", rules.WidthMm, rules.LengthMm, 0, rules.EdgeMarginMm);
        RollTerms terms = new(rules.GapMm, rules.LeadInMm, rules.LeadOutMm, rules.Process, rules.LeastSectionMm, rules.LongestSectionMm, AcrossMm: rules.WidthMm);
        RollChecks.Demand([stock], terms);
        long copies = Math.Max(1, pieces.Sum(p => (long)p.Quantity));
        long fillings = rules.Process is CutProcess.Guillotine ? rules.Iterations : Math.Min(100L * rules.Iterations, rules.Iterations * WorkOfAnOrder / copies);
        RollPlan Laid(IReadOnlyList<Piece> wanted, long work) => new RollCandidate(wanted, [stock], terms).Solve(new(rules.Seed, work), null, cancellation);
        RollPlan plan = RollOvers.Filled(pieces, Laid(pieces, fillings), more => Laid(more, Math.Min(fillings, RollOvers.Look)), cancellation);
        cancellation.ThrowIfCancellationRequested();
        return new([.. plan.Strips.Select(s => s.Layout)], plan.Unplaced);
    }

    /// <summary>The cheapest plan on one of several rolls in stock, or on two of them side by side.</summary>
    /// <param name="pieces">What is wanted.</param>
    /// <param name="stocks">Rolls to choose from; at least one.</param>
    /// <param name="terms">How they are printed and cut, and whether one or two lie on the press.</param>
    /// <param name="rules">Chance, fillings of each worker, workers.</param>
    /// <param name="better">Called with every better plan, one call at a time; may be null.</param>
    /// <param name="stop">Ends the search; the best so far is returned.</param>
    /// <returns>
    /// The plan that leaves the fewest pieces without a place, then costs least, then advances least. Two rolls advance together, so both
    /// are used up to the longer one's end. A piece lies on either roll. Pieces that fit none come back as unplaced. Where pieces allow more
    /// copies than wanted, as many are laid out as cost nothing.
    /// </returns>
    /// <exception cref="ArgumentException">
    /// No roll, an id twice, a size not over 0, a quantity under 1, margins that leave nothing of a roll, a longest section under the least, or
    /// no roll (or pair) that the press takes.
    /// </exception>
    public static RollPlan Solve(
        IReadOnlyList<Piece> pieces, IReadOnlyList<RollStock> stocks, RollTerms terms, SearchRules rules, Action<RollPlan>? better, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        ArgumentNullException.ThrowIfNull(rules);
        RollChecks.Demand(stocks, terms);
        IReadOnlyList<IReadOnlyList<RollStock>> choices = RollChecks.Choices(stocks, terms);
        RollPlan? best = null;
        void Keep(RollPlan plan)
        {
            if (best is not null && Rank(plan).CompareTo(Rank(best)) >= 0)
                return;
            best = plan;
            better?.Invoke(plan);
        }

        // Every choice shortly, then the best of them as long as one likes.
        RollCandidate[] candidates = [.. choices.Select(c => new RollCandidate(pieces, c, terms))];
        RollPlan[] first = new RollPlan[candidates.Length];
        for (int i = 0; i < candidates.Length; i++)
        {
            first[i] = candidates[i].Solve(rules with { Iterations = Math.Min(rules.Iterations, FirstFillings), Workers = 1 }, i == 0 ? Keep : null, stop);
            Keep(first[i]);
        }

        int chosen = Enumerable.Range(0, first.Length).MinBy(i => Rank(first[i]));
        if (rules.Iterations > FirstFillings && !stop.IsCancellationRequested)
            Keep(candidates[chosen].Solve(rules, Keep, stop));

        // A stop ends the search, not the look at what may be made more: that is then short.
        RollPlan More(IReadOnlyList<Piece> more) => new RollCandidate(more, choices[chosen], terms)
            .Solve(rules with { Iterations = stop.IsCancellationRequested ? 0 : Math.Min(rules.Iterations, RollOvers.Look) }, null, CancellationToken.None);
        RollPlan filled = RollOvers.Filled(pieces, best!, More, CancellationToken.None);
        if (filled != best)
            better?.Invoke(filled);
        return filled;
    }

    private static (long Unplaced, double Cost, double Advance) Rank(RollPlan plan) =>
        (plan.Unplaced.Sum(u => (long)u.Copies), Math.Round(plan.Cost, 9), Math.Round(plan.AdvanceMm, 6));
}
