namespace Laydown.Layout.Lanes;

/// <summary>Whether pins of the front lay stop a sheet square.</summary>
internal static class LanePins
{
    private const double SlackMm = 1e-6;

    /// <summary>Two pins stand before the sheet, clear of its sides and far enough apart; a belt without a list of pins has a bar.</summary>
    internal static bool Hold(Belt belt, long start, long width)
    {
        if (belt.PinsMm is not { } pins)
            return true;

        double from = (start / 1000.0) + belt.PinInsetMm - SlackMm, to = ((start + width) / 1000.0) - belt.PinInsetMm + SlackMm;
        IReadOnlyList<double> before = [.. pins.Where(p => p >= from && p <= to)];
        return before.Count >= 2 && before.Max() - before.Min() >= (width / 1000.0 * belt.PinSpreadPercent / 100) - SlackMm;
    }
}
