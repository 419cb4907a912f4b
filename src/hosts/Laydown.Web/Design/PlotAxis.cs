namespace Laydown.Web.Design;

/// <summary>An axis of a plot: what it measures, in what, from where to where.</summary>
/// <param name="Label">What it measures.</param>
/// <param name="Unit">The unit; empty for a number without one.</param>
/// <param name="Least">Value at its start.</param>
/// <param name="Most">Value at its end, over <paramref name="Least"/>.</param>
public sealed record PlotAxis(string Label, string Unit, double Least, double Most)
{
    /// <summary>Whether only whole numbers have a tick, as for counts.</summary>
    public bool Whole { get; init; }

    /// <summary>Label and unit as printed.</summary>
    public string Words => Unit.Length == 0 ? Label : Invariant($"{Label}, {Unit}");

    /// <summary>An axis whose ends are whole steps around the values; at least from <paramref name="least"/> to <paramref name="most"/>.</summary>
    public static PlotAxis Around(string label, string unit, IEnumerable<double> values, double least, double most)
    {
        double low = least, high = most;
        foreach (double value in values.Where(double.IsFinite))
            (low, high) = (Math.Min(low, value), Math.Max(high, value));
        double step = Step(high - low, 6);
        return new(label, unit, Math.Floor(low / step) * step, Math.Ceiling(high / step) * step);
    }

    /// <summary>Ticks at whole steps of 1, 2 or 5, about as many as asked for.</summary>
    public IReadOnlyList<double> Ticks(int about)
    {
        double step = Whole ? Math.Max(1, Step(Most - Least, about)) : Step(Most - Least, about);
        int first = (int)Math.Ceiling((Least / step) - 1e-9), last = (int)Math.Floor((Most / step) + 1e-9);
        return [.. Enumerable.Range(first, last - first + 1).Select(i => i * step)];
    }

    private static double Step(double span, int about)
    {
        double raw = Math.Max(span, 1e-9) / about, ten = Math.Pow(10, Math.Floor(Math.Log10(raw))), part = raw / ten;
        return ten * (part <= 1.000001 ? 1 : part <= 2.000001 ? 2 : part <= 5.000001 ? 5 : 10);
    }
}
