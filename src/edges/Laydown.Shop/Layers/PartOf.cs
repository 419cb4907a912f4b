namespace Laydown.Shop.Layers;

/// <summary>Tells the share of a part of the work as share of the whole; never less than before.</summary>
/// <param name="whole">Told the share of the whole.</param>
/// <param name="from">Where the part starts, 0 to 1.</param>
/// <param name="to">Where it ends.</param>
internal sealed class PartOf(IProgress<double> whole, double from, double to) : IProgress<double>
{
    private readonly Lock gate = new();
    private double furthest = -1;

    public void Report(double value)
    {
        double share = from + ((to - from) * Math.Clamp(value, 0, 1));
        lock (gate)
        {
            if (share <= furthest)
                return;
            furthest = share;
            whole.Report(share);
        }
    }
}
