namespace Laydown.Layout.FreePacking;

/// <summary>Finds the place of a piece on a sheet.</summary>
internal static class FreeFill
{
    /// <summary>No place.</summary>
    internal const long None = long.MaxValue;

    /// <summary>How well a piece suits a bare rectangle; less is better.</summary>
    internal static long Score(FreeFit fit, in Bare b, int w, int h)
    {
        long restW = b.W - w, restH = b.H - h;
        return fit switch
        {
            FreeFit.ShortRest => (Math.Min(restW, restH) << 31) + Math.Max(restW, restH),
            FreeFit.LongRest => (Math.Max(restW, restH) << 31) + Math.Min(restW, restH),
            FreeFit.LeastArea => ((long)b.W * b.H) - ((long)w * h),
            FreeFit.Low => (((long)b.Y + h) << 31) + b.X,
            _ => (((long)b.X + w) << 31) + b.Y,
        };
    }

    /// <summary>The best place of a piece on a sheet, better than <paramref name="best"/>; its score goes there.</summary>
    internal static bool Find(FreeModel model, FreeBoard board, int type, FreeFit fit, ref long best, out Lying spot)
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
            if (w <= b.W && h <= b.H && Score(fit, b, w, h) is long score && score < best)
                (best, spot, found) = (score, new(type, new(b.X, b.Y, b.X + w, b.Y + h), false), true);
            if (turns && h <= b.W && w <= b.H && Score(fit, b, h, w) is long across && across < best)
                (best, spot, found) = (across, new(type, new(b.X, b.Y, b.X + h, b.Y + w), true), true);
        }

        return found;
    }
}
