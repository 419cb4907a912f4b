using Laydown.Layout.Sheets;

namespace Laydown.Layout.Rolls;

/// <summary>Copies beyond what is wanted, where pieces allow them: as many as make the roll no longer.</summary>
internal static class RollOvers
{
    /// <summary>Iterations of each look at some copies more.</summary>
    internal const long Look = 2000;

    /// <summary>The plan with more copies; as it was where none may be made or the roll would get longer.</summary>
    /// <param name="pieces">What is wanted.</param>
    /// <param name="plan">The plan for it.</param>
    /// <param name="solve">Lays out other quantities on the same rolls.</param>
    /// <param name="stop">Ends the work; what was found so far stays.</param>
    internal static RollPlan Filled(IReadOnlyList<Piece> pieces, RollPlan plan, Func<IReadOnlyList<Piece>, RollPlan> solve, CancellationToken stop)
    {
        if (plan.Unplaced.Count > 0)
            return plan;
        (IReadOnlyList<Piece> there, RollPlan best) = (pieces, plan);
        foreach (Piece piece in pieces.Where(p => p.MostOver > 0).OrderByDescending(p => p.Printed.AreaM2).ThenBy(p => p.Id, StringComparer.Ordinal))
        {
            // Halving between what is known to find room and what the bare area takes at most.
            (int fits, int most) = (0, (int)Math.Min(piece.MostOver, best.WasteM2 / piece.Printed.AreaM2));
            for (int next = most; fits < most && !stop.IsCancellationRequested; next = fits + ((most - fits + 1) / 2))
            {
                IReadOnlyList<Piece> more = [.. there.Select(p => p.Id == piece.Id ? p with { Quantity = piece.Quantity + next } : p)];
                RollPlan found = solve(more);
                if (found.Unplaced.Count > 0 || found.AdvanceMm > plan.AdvanceMm + 1e-6 || found.Cost > plan.Cost + 1e-9)
                    most = next - 1;
                else
                    (fits, best) = (next, found);
            }

            there = [.. there.Select(p => p.Id == piece.Id ? p with { Quantity = piece.Quantity + fits } : p)];
        }

        return best;
    }
}
