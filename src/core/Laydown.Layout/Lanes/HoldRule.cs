namespace Laydown.Layout.Lanes;

/// <summary>Whether open zones hold a sheet.</summary>
internal static class HoldRule
{
    private const double Slack = 1e-6;

    /// <summary>Enough of the width over open zones, and no side strip wider than allowed over none. A belt without zones holds everything.</summary>
    internal static bool Holds(Belt belt, IReadOnlyList<int> open, double start, double width)
    {
        if (belt.Zones.Count == 0)
            return true;

        double held = 0, first = double.MaxValue, last = double.MinValue;
        foreach (int i in open)
        {
            BeltZone zone = belt.Zones[i];
            double under = zone.Under(start, width);
            if (under <= 0)
                continue;

            held += under;
            first = Math.Min(first, Math.Max(zone.StartMm, start));
            last = Math.Max(last, Math.Min(zone.EndMm, start + width));
        }

        return held + Slack >= width * belt.HoldSharePercent / 100
            && first - start <= belt.UnheldStripMm + Slack && start + width - last <= belt.UnheldStripMm + Slack;
    }
}
