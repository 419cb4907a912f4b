namespace Laydown.Instances.Sequences;

/// <summary>Judges an order of jobs by walking through it, with nothing of any solver.</summary>
public static class SequenceChecker
{
    /// <summary>Weighted lateness of an order.</summary>
    public static long Cost(SequenceInstance instance, IReadOnlyList<int> order)
    {
        long clock = 0, total = 0;
        for (int at = 0; at < order.Count; at++)
        {
            int job = order[at];
            clock += at == 0 ? instance.FirstSetUps[job] : instance.SetUps[order[at - 1]][job];
            clock += instance.ProcessTimes[job];
            if (clock > instance.DueDates[job])
                total += (clock - instance.DueDates[job]) * instance.Weights[job];
        }

        return total;
    }

    /// <summary>What is wrong with an order and the cost told with it; empty where nothing is.</summary>
    public static IReadOnlyList<string> Faults(SequenceInstance instance, IReadOnlyList<int> order, long told)
    {
        int wanted = instance.ProcessTimes.Count;
        if (order.Count != wanted || order.Distinct().Count() != wanted || order.Any(j => j < 0 || j >= wanted))
            return [FormattableString.Invariant($"{instance.Name}: found an order of {order.Count} places with {order.Distinct().Count()} different jobs; wanted each of {wanted} jobs once.")];

        long cost = Cost(instance, order);
        return cost == told ? [] : [FormattableString.Invariant($"{instance.Name}: told a cost of {told}; the order has {cost}.")];
    }
}
