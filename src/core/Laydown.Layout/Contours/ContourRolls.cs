using Laydown.Layout.Packing;
using Laydown.Layout.Search;
using Laydown.Layout.Sheets;

namespace Laydown.Layout.Contours;

/// <summary>Lays contours out on one roll, or on two side by side that advance together, cut across into sections where these are bounded.</summary>
public static class ContourRolls
{
    /// <summary>Moves of copies between two rolls.</summary>
    private const int Moves = 24;

    /// <summary>The shortest plan found: of two rolls the longer is as short as can be.</summary>
    /// <param name="pieces">What is wanted; ids unique.</param>
    /// <param name="rolls">One roll or two.</param>
    /// <param name="gapMm">Least distance between two pieces, mm; 0 or more.</param>
    /// <param name="bounds">Bounds of the length between two cuts across.</param>
    /// <param name="own">The roll a piece must lie on, 0 or 1, or −1 for any; null where all lie anywhere.</param>
    /// <param name="rules">Chance, iterations of each roll, workers.</param>
    /// <param name="stop">Ends the search; the best so far is returned.</param>
    /// <exception cref="ArgumentException">As <see cref="ContourLayout"/> refuses; no roll, or more than two.</exception>
    public static ContourRollPlan Solve(
        IReadOnlyList<ContourPiece> pieces, IReadOnlyList<ContourStrip> rolls, double gapMm, SectionBounds bounds, Func<string, int>? own, SearchRules rules,
        CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        ArgumentNullException.ThrowIfNull(rolls);
        ArgumentNullException.ThrowIfNull(rules);
        if (rolls.Count is < 1 or > 2)
            throw new ArgumentException(Invariant($"Rolls: found {rolls.Count}; wanted one or two."), nameof(rolls));
        foreach (ContourStrip roll in rolls)
            ContourChecks.Check(ContourProblem.On(roll, gapMm, pieces));

        // One angle for all of a direction, on whichever roll they come to lie.
        IReadOnlyList<ContourPiece> settled = pieces.Any(p => p.Direction is not null) ? Directions.Settled(ContourProblem.On(rolls[0], gapMm, pieces), stop).Pieces : pieces;
        Search search = new(settled, [.. rolls.Select(r => new ContourSections(r, gapMm, bounds))]);
        int[][] counts = rolls.Count == 1 ? [[.. settled.Select(p => p.Copies)]] : search.Evened(Dealt(settled, rolls, own), rolls, own, new(rules.Seed), stop);
        return search.Plan(counts, rules, stop);
    }

    /// <summary>The plan with copies beyond what is wanted, where the length is used anyway; the first roll first.</summary>
    /// <param name="plan">A plan of <see cref="Solve"/>; one that is not whole comes back as it is.</param>
    /// <param name="pieces">What was wanted.</param>
    /// <param name="rolls">Its rolls.</param>
    /// <param name="gapMm">Least distance between two pieces, mm.</param>
    /// <param name="own">The roll a piece must lie on, or −1; null where all lie anywhere.</param>
    /// <param name="mostOver">How many more may be made, by piece.</param>
    public static ContourRollPlan Filled(
        ContourRollPlan plan, IReadOnlyList<ContourPiece> pieces, IReadOnlyList<ContourStrip> rolls, double gapMm, Func<string, int>? own, IReadOnlyDictionary<string, int> mostOver)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(rolls);
        if (plan.Unplaced.Count > 0)
            return plan;
        Dictionary<string, int> left = mostOver.ToDictionary(StringComparer.Ordinal);
        List<ContourLength> lengths = [];
        for (int i = 0; i < rolls.Count; i++)
        {
            ContourLength length = plan.Rolls[i];
            Dictionary<string, int> may = left.Where(l => (own?.Invoke(l.Key) ?? -1) is var o && (o < 0 || o == i)).ToDictionary(StringComparer.Ordinal);
            ContourResult there = new(length.Spots.Count == 0 ? [] : [new(null, length.Spots)], length.LengthMm, 0, 1, []);
            ContourResult filled = ContourOvers.Filled(ContourProblem.On(rolls[i], gapMm, pieces), there, may, length.CutsMm);
            IReadOnlyList<ContourSpot> spots = filled.Sheets.Count == 0 ? [] : filled.Sheets[0].Spots;
            foreach (ContourSpot over in spots.Skip(length.Spots.Count))
                left[over.PieceId]--;
            lengths.Add(length with { Spots = spots });
        }

        return plan with { Rolls = lengths };
    }

    // Each copy on the roll it must lie on, else where least lies by area over width; large pieces first.
    private static int[][] Dealt(IReadOnlyList<ContourPiece> pieces, IReadOnlyList<ContourStrip> rolls, Func<string, int>? own)
    {
        int[][] counts = [.. rolls.Select(_ => new int[pieces.Count])];
        double[] length = new double[rolls.Count];
        foreach (int piece in Enumerable.Range(0, pieces.Count).OrderBy(p => Own(own, pieces[p]) < 0).ThenByDescending(p => pieces[p].Area.AreaMm2))
        {
            int[] takes = [.. Enumerable.Range(0, rolls.Count).Where(r => MayLie(pieces[piece], r, rolls[r], own))];
            for (int copy = 0; copy < pieces[piece].Copies; copy++)
            {
                int roll = takes.Length == 0 ? Math.Max(0, Own(own, pieces[piece])) : takes.MinBy(r => length[r]);
                counts[roll][piece]++;
                length[roll] += pieces[piece].Area.AreaMm2 / rolls[roll].WidthMm;
            }
        }

        return counts;
    }

    private static int Own(Func<string, int>? own, ContourPiece piece) => own?.Invoke(piece.Id) ?? -1;

    private static bool MayLie(ContourPiece piece, int number, ContourStrip roll, Func<string, int>? own) =>
        (Own(own, piece) < 0 || Own(own, piece) == number)
        && piece.Angles.Degrees.Any(a => PieceBox.At(piece, a).HeightMm <= roll.WidthMm - (2 * roll.EdgeMarginMm) + 1e-6);

    /// <summary>Rolls that are filled again and again.</summary>
    private sealed class Search(IReadOnlyList<ContourPiece> pieces, IReadOnlyList<ContourSections> rolls)
    {
        internal ContourRollPlan Plan(int[][] counts, SearchRules rules, CancellationToken stop)
        {
            (ContourLength Length, IReadOnlyList<UnplacedPiece> Unplaced)[] laid = [.. rolls.Select((r, i) => r.Laid(Own(counts[i]), rules, stop))];
            Dictionary<string, int> copies = new(StringComparer.Ordinal);
            ContourLength[] lengths = [.. laid.Select(l => l.Length with { Spots = [.. l.Length.Spots.Select(s => s with { Copy = copies[s.PieceId] = copies.GetValueOrDefault(s.PieceId) + 1 })] })];
            return new(lengths, [.. laid.SelectMany(l => l.Unplaced).GroupBy(u => u.PieceId, StringComparer.Ordinal).Select(g => g.First() with { Copies = g.Sum(u => u.Copies) })]);
        }

        // Moves copies from the longer roll to the shorter, fewer each time that it does not shorten the longer one.
        internal int[][] Evened(int[][] counts, IReadOnlyList<ContourStrip> strips, Func<string, int>? own, Chance chance, CancellationToken stop)
        {
            double[] lengths = Lengths(counts, stop);
            double share = 0.5;
            for (int i = 0; i < Moves && !stop.IsCancellationRequested; i++)
            {
                int from = lengths[0] >= lengths[1] ? 0 : 1, piece = chance.Below(pieces.Count), to = 1 - from;
                if (counts[from][piece] == 0 || lengths[from] <= 0 || !MayLie(pieces[piece], to, strips[to], own))
                    continue;
                int many = Math.Max(1, (int)(share * counts[from][piece] * (lengths[from] - lengths[to]) / lengths[from]));
                int[][] moved = [[.. counts[0]], [.. counts[1]]];
                (moved[from][piece], moved[to][piece]) = (moved[from][piece] - many, moved[to][piece] + many);
                double[] now = Lengths(moved, stop);
                if (now.Max() < lengths.Max())
                    (counts, lengths) = (moved, now);
                else
                    share /= 2;
            }

            return counts;
        }

        private double[] Lengths(int[][] counts, CancellationToken stop) => [.. rolls.Select((r, i) => r.Laid(Own(counts[i]), new(Iterations: 0), stop).Length.LengthMm)];

        private ContourPiece[] Own(int[] counts) => [.. pieces.Select((p, i) => p with { Copies = counts[i] }).Where(p => p.Copies > 0)];
    }
}
