namespace Laydown.Layout.Lanes;

/// <summary>What a laying costs: the open vacuum under no sheet first, then the open zones, then the distance from the load side.</summary>
/// <param name="Uncovered">Open length under no sheet, µm.</param>
/// <param name="Open">Open zones.</param>
/// <param name="Reach">Sum over sheets of the distance from the load side, µm.</param>
internal readonly record struct LaneCost(long Uncovered, int Open, long Reach) : IComparable<LaneCost>
{
    internal static readonly LaneCost None = new(long.MaxValue, int.MaxValue, long.MaxValue);

    internal bool IsNone => Open == int.MaxValue;

    public int CompareTo(LaneCost other)
    {
        int first = Uncovered.CompareTo(other.Uncovered);
        int second = first != 0 ? first : Open.CompareTo(other.Open);
        return second != 0 ? second : Reach.CompareTo(other.Reach);
    }

    internal LaneCost Plus(LaneCost other) => new(Uncovered + other.Uncovered, Open + other.Open, Reach + other.Reach);
}
