namespace Laydown.Output.PressFiles;

/// <summary>Tells how far work is and how long it will take by the rate measured so far. Safe for several threads.</summary>
/// <param name="clock">Measures time.</param>
/// <param name="whole">All work, in any unit.</param>
internal sealed class TimeLeft(TimeProvider clock, double whole)
{
    /// <summary>Below this the rate says little: common practice, no source.</summary>
    private const double LeastSeconds = 1.5;

    private readonly Lock gate = new();
    private readonly long start = clock.GetTimestamp();
    private double kept, made;

    /// <summary>Work that was there already: it takes no time.</summary>
    public void Keep(double work)
    {
        lock (gate)
            kept += work;
    }

    /// <summary>Work just done.</summary>
    /// <returns>Share done of the whole, 0 to 1, and seconds left, or null while the rate is not known.</returns>
    public (double Share, double? SecondsLeft) Make(double work)
    {
        lock (gate)
        {
            made += work;
            double seconds = clock.GetElapsedTime(start).TotalSeconds;
            double left = Math.Max(0, whole - kept - made);
            return (Math.Min(1, (kept + made) / whole), seconds < LeastSeconds ? null : left * seconds / made);
        }
    }
}
