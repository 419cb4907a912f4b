using Laydown.Instances.Sequences;
using Laydown.Plan.Week;

namespace Laydown.Core.Tests.Week;

/// <summary>Instances of tests/data/week, and drawn ones.</summary>
internal static class WeekData
{
    public static SequenceInstance Instance(string name)
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "Laydown.slnx")))
            folder = Path.GetDirectoryName(folder);
        return SequenceInstance.Read(Path.Combine(folder!, "tests", "data", "week", name));
    }

    public static SequenceProblem Problem(SequenceInstance instance) => new(
        [.. instance.ProcessTimes.Select((p, i) => new SequenceJob(Invariant($"{i}"), p, instance.DueDates[i], instance.Weights[i]))],
        instance.FirstSetUps, instance.SetUps);

    public static SequenceProblem Drawn(int seed, int count, int mostWeight = 10)
    {
        Random random = new(seed);
        int Below(int most) => random.Next(most);
        return new(
            [.. Enumerable.Range(0, count).Select(i => new SequenceJob(Invariant($"{i}"), Below(100), Below(60 * count) - 100, Below(mostWeight)))],
            [.. Enumerable.Range(0, count).Select(_ => Below(60))],
            [.. Enumerable.Range(0, count).Select(_ => (IReadOnlyList<int>)[.. Enumerable.Range(0, count).Select(_ => Below(60))])]);
    }
}
