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

    /// <summary>Any move of an order: two blocks by chance, with or without jobs between them.</summary>
    public static SequenceMove Move(WeekChance chance, int count)
    {
        int first = chance.Below(count - 1), second = first + 1 + chance.Below(count - first - 1), third = second + (chance.Below(2) * chance.Below(count - second));
        return new(first, second, third, third + 1 + chance.Below(count - third));
    }
}
