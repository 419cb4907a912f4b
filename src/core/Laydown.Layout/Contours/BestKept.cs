namespace Laydown.Layout.Contours;

/// <summary>Passes on only layouts that are better than all before: fewer pieces left out, then cheaper, then shorter.</summary>
internal sealed class BestKept(Action<ContourResult>? better)
{
    /// <summary>The best so far; null before the first.</summary>
    internal ContourResult? Best { get; private set; }

    internal void Offer(ContourResult next)
    {
        if (Best is not null && Rank(next).CompareTo(Rank(Best)) >= 0)
            return;
        Best = next;
        better?.Invoke(next);
    }

    internal static (int Missing, double Cost, double Length) Rank(ContourResult result) =>
        (result.Unplaced.Sum(u => u.Copies), result.Cost, result.LengthMm);
}
