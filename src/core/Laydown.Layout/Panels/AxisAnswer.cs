namespace Laydown.Layout.Panels;

/// <summary>Panels along one axis, in steps from its start.</summary>
/// <param name="Starts">Where each starts, ascending; the first at 0.</param>
/// <param name="Ends">Where each ends; the last at the length.</param>
/// <param name="Cost">Sum of the costs of the seams.</param>
/// <param name="Spread">Sum over the panels of (n × width − (length + (n − 1) × least overlap))²: 0 for equal widths with the least overlap.</param>
internal sealed record AxisAnswer(int[] Starts, int[] Ends, long Cost, long Spread)
{
    /// <summary>How many panels.</summary>
    internal int Count => Starts.Length;

    /// <summary>Whether this answer is better: fewer panels, then cheaper seams, then less spread, then the first in order of ends and starts.</summary>
    internal bool IsBetterThan(AxisAnswer? other)
    {
        if (other is null || Count != other.Count)
            return other is null || Count < other.Count;
        if ((Cost, Spread) != (other.Cost, other.Spread))
            return (Cost, Spread).CompareTo((other.Cost, other.Spread)) < 0;
        for (int i = 0; i < Count; i++)
        {
            if (Starts[i] != other.Starts[i])
                return Starts[i] < other.Starts[i];
            if (Ends[i] != other.Ends[i])
                return Ends[i] < other.Ends[i];
        }

        return false;
    }
}
