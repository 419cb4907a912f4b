using Laydown.Layout.Packing;
using Laydown.Layout.Rectangles;
using Laydown.Layout.Search;
using Laydown.Layout.Sheets;
using Laydown.Layout.Strips;

namespace Laydown.Layout.Rolls;

/// <summary>Fills one roll, or two side by side, as short as can be.</summary>
/// <param name="Types">Pieces grown by the gap; each fits a roll that it may lie on.</param>
/// <param name="Widths">Usable width of each roll, grown by the gap, µm.</param>
/// <param name="Process">How the rolls are cut.</param>
/// <param name="Longest">Greatest length of a section, µm.</param>
/// <param name="Own">For each type the roll it must lie on, or −1 where it may lie on any.</param>
internal sealed record RollFill(IReadOnlyList<PieceType> Types, IReadOnlyList<int> Widths, CutProcess Process, int Longest, IReadOnlyList<int> Own)
{
    /// <summary>Copies above which a free filling is made of sections too: quick at any count.</summary>
    private const int Many = 50_000;

    /// <summary>Orders, or fillings of a free roll, in the first round; each further round takes twice as many, up to the most.</summary>
    private const long FirstSteps = 1000, MostSteps = 64_000;

    /// <summary>Moves between two rolls before each round, each tried with a share of the round's work.</summary>
    private const int EvenedMoves = 24, EvenedShare = 16;

    private bool IsFree => Process is CutProcess.Free && Types.Sum(t => (long)t.Piece.Quantity) <= Many;

    /// <summary>Pieces of each roll.</summary>
    /// <param name="rules">Chance and work.</param>
    /// <param name="better">Called with every better filling.</param>
    /// <param name="stop">Ends the search; the best so far is returned.</param>
    internal IReadOnlyList<IReadOnlyList<Spot>> Solve(SearchRules rules, Action<IReadOnlyList<IReadOnlyList<Spot>>>? better, CancellationToken stop)
    {
        bool anywhere = Own.All(o => o < 0);
        if (IsFree && anywhere)
            return Parted(StripSearch.Solve(Problem(), rules, better is null ? null : a => better(Parted(a)), stop));

        // What lies on which roll is taken from a free filling, or dealt by area where media differ, and balanced; then each roll is filled by itself.
        int[][] dealt = anywhere
            ? [.. Parted(StripSearch.Solve(Problem(), rules with { Iterations = Math.Min(rules.Iterations, 100) }, null, stop)).Select(Counts)]
            : RollDeal.ByArea(Types, Widths, Own);
        int[][] counts = Widths.Count < 2 ? dealt : new RollDeal(this, rules.Seed).Balanced(dealt, stop);
        return InRounds(counts, rules, better, stop);
    }

    /// <summary>A quick filling of one roll, for comparing what lies where.</summary>
    internal int QuickLength(int[] counts, int roll, int seed, CancellationToken stop) => Length(Filled(counts, roll, new(seed, 0), stop));

    // Two rolls are one strip with a bar that no piece crosses.
    private StripProblem Problem() => new(
        Widths.Count == 1 ? Widths[0] : Widths[0] + 1 + Widths[1],
        [.. Types.Select(t => new RectPiece(t.Piece.Id, t.W, t.H, t.Piece.Quantity, t.MayTurn))], Widths[0], Widths.Count - 1);

    // Every roll shortly, then each again with another chance and twice the work, so that each round's result can be had at once; of two rolls
    // copies are moved from the longer to the shorter in between.
    private IReadOnlyList<IReadOnlyList<Spot>> InRounds(
        int[][] counts, SearchRules rules, Action<IReadOnlyList<IReadOnlyList<Spot>>>? better, CancellationToken stop)
    {
        IReadOnlyList<Spot>[] best = [];
        Chance chance = new(rules.Seed);
        long steps = FirstSteps;
        int round = 0;
        for (long left = rules.Iterations; round == 0 || (left > 0 && best.Max(Length) > Least(counts) && !stop.IsCancellationRequested); round++)
        {
            SearchRules now = rules with { Seed = rules.Seed + (round * rules.Workers), Iterations = Math.Min(left, steps) };
            int before = best.Length == 0 ? int.MaxValue : best.Max(Length);
            if (round > 0 && Widths.Count > 1)
                (counts, best) = Evened(counts, best, now with { Iterations = now.Iterations / EvenedShare }, chance, stop);
            IReadOnlyList<Spot>[] found = [.. counts.Select((c, roll) => Filled(c, roll, now, stop))];
            left -= now.Iterations;
            steps = Math.Min(MostSteps, 2 * steps);
            best = best.Length == 0 ? found : [.. best.Select((b, roll) => Rank(found[roll]).CompareTo(Rank(b)) < 0 ? found[roll] : b)];
            if (best.Max(Length) < before)
                better?.Invoke(best);
        }

        return best;
    }

    // Moves one copy, or changes one for another, wherever the longer roll of the two comes out shorter.
    private (int[][] Counts, IReadOnlyList<Spot>[] Best) Evened(int[][] counts, IReadOnlyList<Spot>[] best, SearchRules rules, Chance chance, CancellationToken stop)
    {
        for (int i = 0; i < EvenedMoves && !stop.IsCancellationRequested; i++)
        {
            int from = Length(best[0]) >= Length(best[1]) ? 0 : 1, type = chance.Below(Types.Count), other = chance.Below(Types.Count);
            if (!MayMove(counts[from], type, 1 - from))
                continue;
            bool changes = chance.Below(2) == 0 && type != other && MayMove(counts[1 - from], other, from);
            int[][] moved = [[.. counts[0]], [.. counts[1]]];
            Move(moved, type, from);
            if (changes)
                Move(moved, other, 1 - from);
            IReadOnlyList<Spot>[] found = [.. moved.Select((c, roll) => Filled(c, roll, rules, stop))];
            if (!stop.IsCancellationRequested && found.Max(Length) < best.Max(Length))
                (counts, best) = (moved, found);
        }

        return (counts, best);
    }

    private bool MayMove(int[] counts, int type, int to) => counts[type] > 0 && Own[type] < 0 && Types[type].Fits(Widths[to], Longest);

    private static void Move(int[][] counts, int type, int from)
    {
        counts[from][type]--;
        counts[1 - from][type]++;
    }

    private int Least(int[][] counts) => Enumerable.Range(0, Widths.Count).Max(roll => RollSearch.LeastLength(Dealt(counts[roll]), Widths[roll]));

    private static int Length(IReadOnlyList<Spot> spots) => spots.Count == 0 ? 0 : spots.Max(s => s.Place.Top);

    private static (int Missing, int Length) Rank(IReadOnlyList<Spot> spots) => (-spots.Count, Length(spots));

    // The types that lie on a roll, as many as were dealt to it.
    private IReadOnlyList<PieceType> Dealt(int[] counts) =>
        [.. Types.Where(t => counts[t.Index] > 0).Select((t, i) => t with { Index = i, Piece = t.Piece with { Quantity = counts[t.Index] } })];

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

    private IReadOnlyList<Spot> Filled(int[] counts, int roll, SearchRules rules, CancellationToken stop)
    {
        int[] kept = [.. Enumerable.Range(0, Types.Count).Where(t => counts[t] > 0)];
        if (kept.Length == 0)
            return [];

        IReadOnlyList<PieceType> own = Dealt(counts);
        if (IsFree)
        {
            StripProblem strip = new(Widths[roll], [.. own.Select(t => new RectPiece(t.Piece.Id, t.W, t.H, t.Piece.Quantity, t.MayTurn))]);
            return [.. StripSearch.Solve(strip, rules, null, stop).Spots.Select(s => new Spot(kept[s.Piece], s.Place, s.Turned))];
        }

        // Each worker walks over orders of its own; the shortest is taken, of equals the first.
        IReadOnlyList<Spot> Walked(int worker) => new RollSearch(own, Widths[roll], rules.Seed + worker, (int)rules.Iterations, Longest).Best(stop);
        IReadOnlyList<Spot> sections = rules.Workers <= 1 || rules.Iterations == 0
            ? Walked(0)
            : Enumerable.Range(0, rules.Workers).AsParallel().AsOrdered().WithDegreeOfParallelism(rules.Workers).Select(Walked).ToList().MinBy(Rank)!;
        return [.. sections.Select(s => s with { Type = kept[s.Type] })];
    }
}
