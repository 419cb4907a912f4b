namespace Laydown.Plan.Week;

/// <summary>Jobs on one press, one after the other, with a set-up between any two that depends on both: which order makes the least weighted lateness?</summary>
/// <remarks>
/// Set-ups need not be alike both ways, and the way round by a third job may be shorter than the direct one: no search relies on either.
/// </remarks>
public sealed class SequenceProblem
{
    /// <summary>A problem.</summary>
    /// <param name="jobs">The jobs.</param>
    /// <param name="firstSetUp">Set-up before a job that comes first, one for each job; 0 or more units.</param>
    /// <param name="setUp">Set-up from a job to the next: a row for each job before, a column for each job after; 0 or more units.</param>
    /// <exception cref="ArgumentException">A table of another size than the jobs ask for, a length, weight or set-up below 0, or times or weights beyond 2³⁰ in sum.</exception>
    public SequenceProblem(IReadOnlyList<SequenceJob> jobs, IReadOnlyList<int> firstSetUp, IReadOnlyList<IReadOnlyList<int>> setUp)
    {
        if (firstSetUp.Count != jobs.Count || setUp.Count != jobs.Count || setUp.Any(r => r.Count != jobs.Count))
            throw new ArgumentException(Invariant($"Set-ups: found a table that is not {jobs.Count} × {jobs.Count} with {jobs.Count} first ones; wanted one for each pair of jobs."), nameof(setUp));
        if (jobs.FirstOrDefault(j => j.Length < 0 || j.Weight < 0) is { } bad)
            throw new ArgumentException(Invariant($"Job {bad.Id}: found length {bad.Length} and weight {bad.Weight}; wanted 0 or more."), nameof(jobs));
        if (firstSetUp.Concat(setUp.SelectMany(r => r)).Any(s => s < 0))
            throw new ArgumentException("Set-ups: found one below 0; wanted 0 or more.", nameof(setUp));

        Jobs = jobs;
        Count = jobs.Count;
        SetUps = [.. setUp.SelectMany(r => r), .. firstSetUp];
        long longest = jobs.Sum(j => (long)j.Length) + (Count * (long)SetUps.DefaultIfEmpty().Max());
        long farthest = longest + jobs.Select(j => Math.Abs((long)j.Due)).DefaultIfEmpty().Max();
        if (farthest > MostTime)
            throw new ArgumentException(Invariant($"Times: found {farthest} units in sum; wanted {MostTime} or fewer."), nameof(jobs));
        if (jobs.Sum(j => (long)j.Weight) > MostTime)
            throw new ArgumentException(Invariant($"Weights: found {jobs.Sum(j => (long)j.Weight)} in sum; wanted {MostTime} or fewer."), nameof(jobs));
        IsSmall = jobs.Sum(j => (double)j.Weight) * farthest < int.MaxValue;
    }

    private const long MostTime = 1L << 30;

    /// <summary>The jobs; an order is told by their places here.</summary>
    public IReadOnlyList<SequenceJob> Jobs { get; }

    internal int Count { get; }

    /// <summary>Set-ups, a row for each job before and a last one for the start.</summary>
    internal int[] SetUps { get; }

    /// <summary>Whether every cost fits 32 bits.</summary>
    internal bool IsSmall { get; }

    /// <summary>Weighted lateness of an order, plainly: one job after the other. Holds for any order of all or some of the jobs.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A place that is no job's.</exception>
    public long CostOf(IEnumerable<int> order)
    {
        long time = 0, cost = 0;
        int before = Count;
        foreach (int job in order)
        {
            ArgumentOutOfRangeException.ThrowIfNegative(job, nameof(order));
            ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(job, Count, nameof(order));
            time += SetUps[(before * Count) + job] + Jobs[job].Length;
            cost += Jobs[job].Weight * Math.Max(0, time - Jobs[job].Due);
            before = job;
        }

        return cost;
    }
}
