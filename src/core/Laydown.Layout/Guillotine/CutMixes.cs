using Laydown.Layout.Packing;

namespace Laydown.Layout.Guillotine;

/// <summary>Draws which sheets are opened for those that were closed, so that all pieces have room by their area and the goal of cost is kept.</summary>
/// <remarks>
/// With several sizes to take from, most sets of sheets under the goal have too little area for the pieces: steps of a walk seldom close whole sheets, so it
/// is put on a set that can hold them (from memory).
/// </remarks>
/// <param name="job">The problem.</param>
/// <param name="chance">Chance of its walk.</param>
internal sealed class CutMixes(CutJob job, Chance chance)
{
    /// <summary>Most sheets of one stock that are opened at once, and most sets that are looked through.</summary>
    private const int MostEach = 8, MostSets = 3000;

    /// <summary>The largest of so many sets drawn is taken: room is what a walk wants.</summary>
    private const int Draws = 3;

    private readonly int stocks = job.Problem.Stocks.Count;
    private readonly int[] counts = new int[job.Problem.Stocks.Count];
    private readonly List<int[]> sets = [];
    private readonly List<long> areas = [];
    private int looked;

    /// <summary>Whether there is anything to choose between.</summary>
    internal bool MayDiffer { get; } = job.Problem.Stocks.Count(s => s.Copies is not 0) > 1;

    /// <summary>Opens sheets in a forest; none where no set holds all pieces within the limit.</summary>
    /// <param name="forest">Pieces without a place, and sheets that stay open.</param>
    /// <param name="limit">Most all sheets may cost.</param>
    /// <returns>Whether any was opened.</returns>
    internal bool Open(CutForest forest, long limit)
    {
        sets.Clear();
        areas.Clear();
        looked = 0;
        long room = 0;
        foreach (int slot in forest.Open)
            room += job.Problem.Stocks[forest.SheetAt(slot).Stock].Area - forest.SheetAt(slot).Area;
        Collect(forest, chance.Below(stocks), 0, limit - forest.Cost, forest.MissingArea - room, 0);
        if (sets.Count == 0)
            return false;

        int drawn = chance.Below(sets.Count);
        for (int i = 1; i < Draws; i++)
            drawn = chance.Below(sets.Count) is var other && areas[other] > areas[drawn] ? other : drawn;
        for (int s = 0; s < stocks; s++)
            for (int n = 0; n < sets[drawn][s]; n++)
                forest.OpenSheet(s, chance.Below(job.Parts[s].Count));
        return true;
    }

    // All numbers of sheets of one stock after the other.
    private void Collect(CutForest forest, int first, int depth, long budget, long wanted, long area)
    {
        if (depth == stocks)
        {
            if (area >= wanted && area > 0)
            {
                sets.Add([.. counts]);
                areas.Add(area);
            }

            return;
        }

        int stock = (first + depth) % stocks;
        for (int n = 0; n <= Math.Min(MostEach, forest.Free[stock]) && n * job.Costs[stock] <= budget && looked < MostSets; n++, looked++)
        {
            counts[stock] = n;
            Collect(forest, first, depth + 1, budget - (n * job.Costs[stock]), wanted, area + (n * job.Problem.Stocks[stock].Area));
        }

        counts[stock] = 0;
    }
}
