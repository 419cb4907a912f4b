namespace Laydown.Optics.Panels;

/// <summary>What a search moves: one tone for each ink, but one for a light and a dark ink of one hue together.</summary>
internal sealed class PanelTones
{
    private readonly int[] first, second;
    private readonly double[]?[] firstSteps, secondSteps;
    private readonly double[] most;

    /// <summary>Tones of a panel, those in front first.</summary>
    internal PanelTones(PanelStack stack)
    {
        PanelLimits limits = stack.Limits;
        int inFront = limits.FrontMost.Count, inks = inFront + limits.BackMost.Count;
        double[] inkMost = [.. limits.FrontMost, .. limits.BackMost];
        int[] alone = [.. Enumerable.Range(0, inks).Where(ink => !stack.Splits.Any(s => s.Light == ink))];
        InkCount = inks;
        FrontInks = inFront;
        Count = alone.Length;
        FrontCount = alone.Count(ink => ink < inFront);
        first = alone;
        PanelSplit?[] splits = [.. alone.Select(ink => stack.LightInksBare ? null : stack.Splits.FirstOrDefault(s => s.Dark == ink))];
        second = [.. splits.Select(s => s?.Light ?? -1)];
        firstSteps = [.. splits.Select(s => s?.DarkSteps.ToArray())];
        secondSteps = [.. splits.Select(s => s?.LightSteps.ToArray())];
        most = [.. Enumerable.Range(0, Count).Select(tone => MostOf(tone, inkMost))];
    }

    /// <summary>Number of tones.</summary>
    internal int Count { get; }

    /// <summary>Tones in front.</summary>
    internal int FrontCount { get; }

    /// <summary>Number of inks.</summary>
    internal int InkCount { get; }

    /// <summary>Inks in front.</summary>
    internal int FrontInks { get; }

    /// <summary>Most of each tone, so that no ink exceeds its limit.</summary>
    internal ReadOnlySpan<double> Most => most;

    /// <summary>The first ink of a tone: its only one, or the dark one.</summary>
    internal int First(int tone) => first[tone];

    /// <summary>The light ink of a tone, or −1.</summary>
    internal int Second(int tone) => second[tone];

    /// <summary>Inks of tones.</summary>
    internal void Inks(ReadOnlySpan<double> tones, Span<double> inks)
    {
        inks.Clear();
        for (int tone = 0; tone < Count; tone++)
        {
            inks[first[tone]] = firstSteps[tone] is { } dark ? At(dark, tones[tone]).Value : tones[tone];
            if (secondSteps[tone] is { } light)
                inks[second[tone]] = At(light, tones[tone]).Value;
        }
    }

    /// <summary>How both inks of each tone change with it: two numbers a tone.</summary>
    internal void Slopes(ReadOnlySpan<double> tones, Span<double> slopes)
    {
        for (int tone = 0; tone < Count; tone++)
        {
            slopes[2 * tone] = firstSteps[tone] is { } dark ? At(dark, tones[tone]).Slope : 1;
            slopes[(2 * tone) + 1] = secondSteps[tone] is { } light ? At(light, tones[tone]).Slope : 0;
        }
    }

    // Straight between steps.
    private static (double Value, double Slope) At(double[] steps, double tone)
    {
        double at = Math.Clamp(tone, 0, 1) * (steps.Length - 1);
        int below = Math.Min((int)at, steps.Length - 2);
        double step = steps[below + 1] - steps[below];
        return (steps[below] + ((at - below) * step), step * (steps.Length - 1));
    }

    private double MostOf(int tone, double[] inkMost)
    {
        if (firstSteps[tone] is not { } dark || secondSteps[tone] is not { } light)
            return inkMost[first[tone]];
        for (int step = dark.Length - 1; step > 0; step--)
        {
            double whole = Enumerable.Range(0, step + 1).Max(i => Math.Max(dark[i] - inkMost[first[tone]], light[i] - inkMost[second[tone]]));
            if (whole <= 1e-9)
                return step / (dark.Length - 1.0);
        }

        return 1.0 / (dark.Length - 1);
    }
}
