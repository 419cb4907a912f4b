using Laydown.Measures;

namespace Laydown.Colour.Charts;

/// <summary>One ink of a chart.</summary>
public sealed record ChartInk
{
    /// <summary>An ink with its limit.</summary>
    /// <param name="name">Name; Cyan, Magenta, Yellow and Black are known for greys and nodes.</param>
    /// <param name="limitPercent">Most of it, percent of one full ink, 1 to 100.</param>
    public ChartInk(string name, double limitPercent = 100)
    {
        Name = Bounds.Named(name);
        LimitPercent = Bounds.Within(limitPercent, 1, 100);
    }

    /// <summary>Name.</summary>
    public string Name { get; }

    /// <summary>Most of it, percent of one full ink.</summary>
    public double LimitPercent { get; }
}
