using Laydown.Layout.Packing;

namespace Laydown.Layout.FreePacking;

/// <summary>Puts the pieces that lie on no sheet where they fit, in an order and by a rule of chance; now and then a place is overlooked.</summary>
internal sealed class FreeRecreate(FreeModel model, int[] available, int pieces, Chance chance)
{
    /// <summary>Share of places overlooked: without it the same choice would be made again and again.</summary>
    private const double Overlooked = 0.03;

    /// <summary>Keys of the order are lowered by up to this share.</summary>
    private const double Noise = 0.3;

    private static readonly double OverlookedLog = Math.Log(1 - Overlooked);

    private readonly double[] keys = new double[pieces];
    private readonly int[] failed = new int[model.Types];
    private readonly int[] tried = new int[model.Types];
    private int pass;
    private int untilOverlooked = 1;

    /// <summary>Marks what lies on no sheet now: it found no place before, and needs to be tried only on sheets that change from here on.</summary>
    internal void Know(FreeState state)
    {
        pass++;
        foreach (int type in state.Out.AsSpan(0, state.OutCount))
            tried[type] = pass;
    }

    /// <summary>Places what fits; new sheets are taken while the cost stays within the limit.</summary>
    internal void Do(FreeState state, double limit)
    {
        Sort(state);
        FreeFit fit = chance.Below(2) == 0 ? FreeFit.ShortRest : (FreeFit)chance.Below(3);
        (int count, int kept) = (state.OutCount, 0);
        state.OutArea = 0;
        for (int i = 0; i < count; i++)
        {
            int type = state.Out[i];
            if (failed[type] != pass && (Put(state, type, fit) || Open(state, type, limit)))
                continue;

            failed[type] = pass;
            state.Out[kept++] = type;
            state.OutArea += model.Area[type];
        }

        state.OutCount = kept;
    }

    /// <summary>The same where nothing was tried before.</summary>
    internal void DoAnew(FreeState state, double limit)
    {
        pass++;
        Do(state, limit);
    }

    /// <summary>Puts all that is left out on one more sheet, if the cost stays within the limit.</summary>
    internal bool OneMore(FreeState state, double limit)
    {
        foreach (int s in model.Cheapest)
        {
            if (state.Cost + model.Cost[s] > limit + (limit - FreeModel.Under(limit)) || state.UsedOf[s] >= available[s] || state.OutArea > model.BareArea[s])
                continue;

            state.Begin();
            state.Open(s);
            Know(state);
            Do(state, double.NegativeInfinity);
            if (state.OutCount == 0)
                return true;

            state.Undo();
        }

        return false;
    }

    private bool Put(FreeState state, int type, FreeFit fit)
    {
        long best = FreeFill.None;
        (int slot, Lying spot) = (-1, default);

        // Of places that suit alike the first is taken: where the look begins is left to chance.
        ReadOnlySpan<int> touched = tried[type] == pass ? state.Touched : default;
        int count = tried[type] == pass ? touched.Length : state.Slots;
        int first = count == 0 ? 0 : chance.Below(count);
        for (int k = 0; k < count; k++)
        {
            int s = first + k < count ? first + k : first + k - count;
            if (!touched.IsEmpty)
                s = touched[s];
            if (state[s].Stock >= 0 && Find(state[s], type, fit, ref best, out Lying found))
                (slot, spot) = (s, found);
        }

        if (slot >= 0)
            state.Add(slot, spot);
        return slot >= 0;
    }

    private bool Open(FreeState state, int type, double limit)
    {
        int first = chance.Below(model.Stocks);
        for (int k = 0; k < model.Stocks; k++)
        {
            int s = (first + k) % model.Stocks;
            if (state.Cost + model.Cost[s] > limit || state.UsedOf[s] >= available[s] || !model.Fits(type, s))
                continue;

            int slot = state.Open(s);
            long best = FreeFill.None;
            FreeFill.Find(model, state[slot], type, FreeFit.ShortRest, ref best, out Lying spot);
            state.Add(slot, spot);
            return true;
        }

        return false;
    }

    // As FreeFill.Find, but for the places overlooked.
    private bool Find(FreeBoard board, int type, FreeFit fit, ref long best, out Lying spot)
    {
        spot = default;
        (int w, int h, bool turns) = (model.W[type], model.H[type], model.Turns[type]);
        bool upright = w <= board.MostW && h <= board.MostH;
        turns = turns && h <= board.MostW && w <= board.MostH;
        if (!upright && !turns)
            return false;

        bool found = false;
        foreach (ref readonly Bare b in board.Rests)
        {
            if (upright && w <= b.W && h <= b.H && FreeFill.Score(fit, b, w, h) is long score && score < best && !Overlooks())
                (best, spot, found) = (score, new(type, new(b.X, b.Y, b.X + w, b.Y + h), false), true);
            if (turns && h <= b.W && w <= b.H && FreeFill.Score(fit, b, h, w) is long across && across < best && !Overlooks())
                (best, spot, found) = (across, new(type, new(b.X, b.Y, b.X + h, b.Y + w), true), true);
        }

        return found;
    }

    // Chance is drawn once for the distance to the next place overlooked.
    private bool Overlooks()
    {
        if (--untilOverlooked > 0)
            return false;

        untilOverlooked = 1 + (int)(Math.Log(1 - chance.Share()) / OverlookedLog);
        return true;
    }

    private void Sort(FreeState state)
    {
        int kind = chance.Below(10);
        for (int i = 0; i < state.OutCount; i++)
        {
            int type = state.Out[i];
            double key = kind == 9 ? chance.Share() : Size(kind, type) * (1 - (Noise * chance.Share()));
            int j = i;
            for (; j > 0 && keys[j - 1] < key; j--)
                (keys[j], state.Out[j]) = (keys[j - 1], state.Out[j - 1]);
            (keys[j], state.Out[j]) = (key, type);
        }
    }

    private double Size(int kind, int type) => kind switch
    {
        < 4 => model.Area[type],
        < 6 => Math.Max(model.W[type], model.H[type]),
        < 8 => Math.Min(model.W[type], model.H[type]),
        _ => (double)model.W[type] + model.H[type],
    };
}
