namespace Laydown.Layout.Packing;

/// <summary>How well a piece fits a bare rectangle: less is better; the second value only breaks ties of the first.</summary>
internal readonly record struct FitScore(long First, long Second)
{
    /// <summary>Worse than any fit.</summary>
    internal static FitScore None => new(long.MaxValue, long.MaxValue);

    internal static FitScore Of(Fit fit, Box bare, int w, int h)
    {
        int restW = bare.W - w, restH = bare.H - h;
        int shortRest = restW < restH ? restW : restH, longRest = restW < restH ? restH : restW;
        return fit switch
        {
            Fit.ShortRest => new(shortRest, longRest),
            Fit.LongRest => new(longRest, shortRest),
            Fit.Area => new(bare.Area - ((long)w * h), shortRest),
            _ => new(bare.Y + h, bare.X),
        };
    }

    // Compared by hand: this is the innermost loop of every search.
    internal bool IsBetterThan(FitScore other) => First < other.First || (First == other.First && Second < other.Second);
}
