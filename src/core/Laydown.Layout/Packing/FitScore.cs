namespace Laydown.Layout.Packing;

/// <summary>How well a piece fits a bare rectangle: less is better.</summary>
internal static class FitScore
{
    /// <summary>Two values, the second only breaks ties of the first.</summary>
    internal static (long First, long Second) Of(Fit fit, Box bare, int w, int h)
    {
        int restW = bare.W - w, restH = bare.H - h;
        int shortRest = Math.Min(restW, restH), longRest = Math.Max(restW, restH);
        return fit switch
        {
            Fit.ShortRest => (shortRest, longRest),
            Fit.LongRest => (longRest, shortRest),
            Fit.Area => (bare.Area - ((long)w * h), shortRest),
            _ => (bare.Y + h, bare.X),
        };
    }
}
