namespace Laydown.Layout.FreePacking;

/// <summary>Fills sheets one after the other in a given order of pieces: the first answer.</summary>
internal sealed class FreeFirst(FreeModel model)
{
    private readonly int[] left = new int[model.Types];
    private readonly int[] put = new int[model.Types];
    private readonly int[] bestPut = new int[model.Types];
    private readonly int[] usedOf = new int[model.Stocks];
    private readonly int[] order = new int[model.Types];
    private int orderCount;

    /// <summary>A layout in one order of pieces by one rule of fitting; each sheet as often as its pieces are still wanted.</summary>
    /// <returns>Null where it was stopped on the way.</returns>
    internal FreeLayout? Fill(ReadOnlySpan<int> wantedOrder, FreeFit fit, CancellationToken stop)
    {
        model.Wanted.CopyTo(left, 0);
        Array.Clear(usedOf);
        wantedOrder.CopyTo(order);
        orderCount = wantedOrder.Length;
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
        for (int i = 0; i < orderCount; i++)
            if (bestPut[order[i]] > 0)
                repeats = Math.Min(repeats, left[order[i]] / bestPut[order[i]]);

        int kept = 0;
        for (int i = 0; i < orderCount; i++)
        {
            int type = order[i];
            left[type] -= bestPut[type] * repeats;
            if (left[type] > 0)
                order[kept++] = type;
        }

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
            put.CopyTo(bestPut, 0);
        }

        return best;
    }

    private bool One(FreeFit fit, FreeBoard board)
    {
        Array.Clear(put);
        bool all = true;
        for (int i = 0; i < orderCount; i++)
        {
            int type = order[i];
            while (put[type] < left[type])
            {
                long best = FreeFill.None;
                if (!FreeFill.Find(model, board, type, fit, ref best, out Lying spot))
                    break;

                board.Add(model, spot);
                put[type]++;
            }

            all &= put[type] == left[type];
            if (board.Rests.IsEmpty && !all)
                return false;
        }

        return all;
    }
}
