namespace Laydown.Instances.Panels;

/// <summary>Judges panels of an axis.</summary>
public static class PanelChecker
{
    /// <summary>What is wrong with them; empty when they are right and cost what they say.</summary>
    public static IReadOnlyList<string> Faults(PanelInstance axis, PanelAnswer answer)
    {
        List<string> faults = [];
        int count = answer.Starts.Count;
        int[] lengths = [.. answer.Ends.Select((e, i) => e - answer.Starts[i])];
        if (answer.Starts[0] != 0 || answer.Ends[^1] != axis.Length)
            faults.Add("panels do not reach from end to end");
        if (lengths.Any(l => l < axis.Least || l > axis.Most))
            faults.Add("a panel is too short or too long");
        if (axis.Kind == 0 && lengths.Max() - lengths.Min() > 1)
            faults.Add("panels are not alike");
        if (axis.Kind == 2 && lengths.Take(count - 1).Any(l => l != axis.Most))
            faults.Add("a panel before the last is not full");
        if (axis.Kind == 3 && !lengths.SequenceEqual(axis.Given))
            faults.Add("panels have not the lengths given");
        long cost = 0;
        for (int i = 1; i < count; i++)
        {
            int overlap = answer.Ends[i - 1] - answer.Starts[i];
            long seam = axis.Seam(answer.Ends[i - 1], answer.Starts[i]);
            if (overlap < axis.OverlapLeast || overlap > axis.OverlapMost)
                faults.Add(Invariant($"overlap {i} is {overlap}"));
            if (seam < 0)
                faults.Add(Invariant($"seam {i} lies where it must not"));
            cost += seam;
        }

        if (faults.Count == 0 && (cost, axis.Spread(lengths, count)) != (answer.Cost, answer.Spread))
            faults.Add("cost or spread is not what it says");
        return faults;
    }
}
