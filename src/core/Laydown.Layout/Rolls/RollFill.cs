using Laydown.Layout.Packing;
using Laydown.Layout.Rectangles;
using Laydown.Layout.Search;
using Laydown.Layout.Sheets;
using Laydown.Layout.Strips;

namespace Laydown.Layout.Rolls;

/// <summary>Fills one roll, or two side by side, as short as can be.</summary>
/// <param name="Types">Pieces grown by the gap; each fits a roll.</param>
/// <param name="Widths">Usable width of each roll, grown by the gap, µm.</param>
/// <param name="Process">How the rolls are cut.</param>
/// <param name="Longest">Greatest length of a section, µm.</param>
internal sealed record RollFill(IReadOnlyList<PieceType> Types, IReadOnlyList<int> Widths, CutProcess Process, int Longest)
{
    /// <summary>Copies above which a free filling is made of sections too: quick at any count.</summary>
    private const int Many = 50_000;

    private const int Moves = 40, MostSteps = 100_000;

    /// <summary>Pieces of each roll.</summary>
    /// <param name="rules">Chance and work.</param>
    /// <param name="better">Called with every better filling.</param>
    /// <param name="stop">Ends the search; the best so far is returned.</param>
    internal IReadOnlyList<IReadOnlyList<Spot>> Solve(SearchRules rules, Action<IReadOnlyList<IReadOnlyList<Spot>>>? better, CancellationToken stop)
    {
        // Two rolls are one strip with a bar that no piece crosses.
        int width = Widths.Count == 1 ? Widths[0] : Widths[0] + 1 + Widths[1];
        StripProblem problem = new(
            width, [.. Types.Select(t => new RectPiece(t.Piece.Id, t.W, t.H, t.Piece.Quantity, t.MayTurn))], Widths[0], Widths.Count - 1);
        if (Process is CutProcess.Free && Types.Sum(t => (long)t.Piece.Quantity) <= Many)
            return Parted(StripSearch.Solve(problem, rules, better is null ? null : a => better(Parted(a)), stop));

        // Cut edge to edge: what lies on which roll is taken from a free filling and balanced, then each roll is filled by sections.
        StripAnswer dealt = StripSearch.Solve(problem, rules with { Iterations = Math.Min(rules.Iterations, 100) }, null, stop);
        int[][] counts = Balanced([.. Parted(dealt).Select(Counts)], rules.Seed, stop);
        IReadOnlyList<IReadOnlyList<Spot>> filled = [.. counts.Select((c, roll) => Sectioned(c, roll, (int)Math.Min(rules.Iterations, MostSteps), rules.Seed, stop))];
        better?.Invoke(filled);
        return filled;
    }

    // Moves copies from the longer roll to the shorter where that shortens the longer one.
    private int[][] Balanced(int[][] counts, int seed, CancellationToken stop)
    {
        if (counts.Length < 2)
            return counts;

        Chance chance = new(seed);
        int[] lengths = [.. counts.Select((c, roll) => Length(Sectioned(c, roll, 0, seed, stop)))];
        for (int i = 0; i < Moves && !stop.IsCancellationRequested; i++)
        {
            int from = lengths[0] >= lengths[1] ? 0 : 1, type = chance.Below(Types.Count);
            if (counts[from][type] == 0 || !Types[type].Fits(Widths[1 - from], Longest))
                continue;

            int[][] moved = [[.. counts[0]], [.. counts[1]]];
            moved[from][type]--;
            moved[1 - from][type]++;
            int[] now = [.. moved.Select((c, roll) => Length(Sectioned(c, roll, 0, seed, stop)))];
            if (now.Max() <= lengths.Max())
                (counts, lengths) = (moved, now);
        }

        return counts;
    }

    private static int Length(IReadOnlyList<Spot> spots) => spots.Count == 0 ? 0 : spots.Max(s => s.Place.Top);

    private int[] Counts(IReadOnlyList<Spot> spots)
    {
        int[] counts = new int[Types.Count];
        foreach (Spot spot in spots)
            counts[spot.Type]++;
        return counts;
    }

    private IReadOnlyList<IReadOnlyList<Spot>> Parted(StripAnswer answer)
    {
        IEnumerable<Spot> On(int roll) => answer.Spots.Where(s => (s.Place.X >= Widths[0] ? 1 : 0) == roll || Widths.Count == 1)
            .Select(s => new Spot(s.Piece, s.Place with { X = s.Place.X - (roll * (Widths[0] + 1)) }, s.Turned));
        return [.. Widths.Select((_, roll) => (IReadOnlyList<Spot>)[.. On(roll)])];
    }

    private IReadOnlyList<Spot> Sectioned(int[] counts, int roll, int steps, int seed, CancellationToken stop)
    {
        int[] kept = [.. Enumerable.Range(0, Types.Count).Where(t => counts[t] > 0)];
        if (kept.Length == 0)
            return [];

        IReadOnlyList<PieceType> own = [.. kept.Select((t, i) => Types[t] with { Index = i, Piece = Types[t].Piece with { Quantity = counts[t] } })];
        return [.. new RollSearch(own, Widths[roll], seed, steps, Longest).Best(stop).Select(s => s with { Type = kept[s.Type] })];
    }
}
