namespace Laydown.Layout.FreePacking;

/// <summary>Fills sheets one after the other in a given order of pieces: the first answer.</summary>
internal sealed class FreeFirst(FreeModel model)
{
    private readonly int[] left = new int[model.Types];
    private readonly int[] put = new int[model.Types];
    private List<(int Type, int Copies)> taken = [], bestTaken = [];
    private readonly int[] usedOf = new int[model.Stocks];
    private readonly int[] order = new int[model.Types];
    private int orderCount;
    private bool isFalling;

    /// <summary>A layout in one order of pieces by one rule of fitting; each sheet as often as its pieces are still wanted.</summary>
    /// <returns>Null where it was stopped on the way.</returns>
    internal FreeLayout? Fill(ReadOnlySpan<int> wantedOrder, FreeFit fit, CancellationToken stop)
    {
        model.Wanted.CopyTo(left, 0);
        Array.Clear(usedOf);
        wantedOrder.CopyTo(order);
        orderCount = wantedOrder.Length;
        isFalling = true;
        for (int i = 1; i < orderCount && isFalling; i++)
            isFalling = model.Area[order[i]] <= model.Area[order[i - 1]];
        List<FreeSheet> sheets = [];
        while (Best(fit) is FreeBoard board)
        {
            if (stop.IsCancellationRequested)
                return null;

            sheets.Add(new(board, Repeat(board.Stock)));
        }

        int[] missing = [.. left];
        for (int t = 0; t < missing.Length; t++)
            missing[t] += model.Hopeless[t];
        return new(model, sheets, missing);
    }

    // The same sheet serves again as often as its scarcest piece is still wanted.
    private int Repeat(int stock)
    {
        int repeats = model.StockCopies[stock] - usedOf[stock];
        foreach ((int type, int copies) in bestTaken)
            repeats = Math.Min(repeats, left[type] / copies);
        foreach ((int type, int copies) in bestTaken)
            left[type] -= copies * repeats;

        int kept = 0;
        for (int i = 0; i < orderCount; i++)
            if (left[order[i]] > 0)
                order[kept++] = order[i];
        orderCount = kept;
        usedOf[stock] += repeats;
        return repeats;
    }

    // The next sheet: of all stocks the one that carries most area for its price; at the end the cheapest that carries all the rest.
    private FreeBoard? Best(FreeFit fit)
    {
        FreeBoard? best = null;
        (bool bestAll, double bestWorth) = (false, 0);
        for (int s = 0; s < model.Stocks && orderCount > 0; s++)
        {
            if (usedOf[s] >= model.StockCopies[s])
                continue;

            FreeBoard board = new();
            board.Open(model, s);
            bool all = One(fit, board);
            double worth = all ? 1 / (model.Cost[s] + 1e-9) : board.Used / (model.Cost[s] + 1e-9);
            if (board.Count == 0 || (best is not null && (bestAll == all ? worth <= bestWorth : bestAll)))
                continue;

            (best, bestAll, bestWorth) = (board, all, worth);
            (taken, bestTaken) = (bestTaken, taken);
        }

        return best;
    }

    private bool One(FreeFit fit, FreeBoard board)
    {
        taken.Clear();
        bool all = true;
        (long area, int w, int h) = Largest(board);
        for (int i = 0; i < orderCount; i++)
        {
            // Of a hundred thousand pieces most are plainly larger than what is bare; in an order by area they are passed over at once.
            int type = order[i];
            if (model.Area[type] > area && isFalling)
            {
                all = false;
                i = FirstWithin(area, i + 1) - 1;
                continue;
            }

            if (model.Area[type] > area || ((model.W[type] > w || model.H[type] > h) && (!model.Turns[type] || model.H[type] > w || model.W[type] > h)))
            {
                all = false;
                continue;
            }

            put[type] = 0;
            while (put[type] < left[type])
            {
                long best = FreeFill.None;
                if (!FreeFill.Find(model, board, type, fit, ref best, out Lying spot))
                    break;

                board.Add(model, spot);
                put[type]++;
            }

            all &= put[type] == left[type];
            if (put[type] == 0)
                continue;

            taken.Add((type, put[type]));
            (area, w, h) = Largest(board);
            if (board.Rests.IsEmpty && !all)
                return false;
        }

        return all;
    }

    // Where in an order by falling area the pieces of at most an area begin, looked for by halves.
    private int FirstWithin(long area, int from)
    {
        (int low, int high) = (from, orderCount);
        while (low < high)
        {
            int middle = low + ((high - low) / 2);
            (low, high) = model.Area[order[middle]] > area ? (middle + 1, high) : (low, middle);
        }

        return low;
    }

    private static (long Area, int W, int H) Largest(FreeBoard board)
    {
        (long area, int w, int h) = (0, 0, 0);
        foreach (Bare rest in board.Rests)
            (area, w, h) = (Math.Max(area, rest.Area), Math.Max(w, rest.W), Math.Max(h, rest.H));
        return (area, w, h);
    }
}
