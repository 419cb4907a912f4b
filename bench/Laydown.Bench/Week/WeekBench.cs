using System.Diagnostics;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Laydown.Bench.Layout;
using Laydown.Instances.Sequences;
using Laydown.Layout.Search;
using Laydown.Plan.Week;

namespace Laydown.Bench.Week;

/// <summary>Puts the jobs of published instances in order and judges every order with a checker that shares nothing with the search.</summary>
internal static class WeekBench
{
    private const double UsualSeconds = 5;
    private const int Seed = 1;
    private const string Optimum = "optimal_total_weighted_tardiness";

    /// <summary>All instances found in the folder asked for and in the folders in it.</summary>
    /// <exception cref="InvalidDataException">No folder has an instance, or a file cannot be read.</exception>
    public static WeekResult Run(BenchArguments arguments, TextWriter progress, CancellationToken cancellation)
    {
        string root = arguments.Instances ?? Own();
        string[] folders = [root, .. Directory.EnumerateDirectories(root, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal)];
        List<(string File, LayoutValues Values)> files =
            [.. folders.SelectMany(d => SequenceInstance.FilesIn(d).Select(f => (f, LayoutValues.Of(d)))).Where((_, i) => i % arguments.Sample == 0)];
        if (files.Count == 0)
            throw new InvalidDataException(Invariant($"{root}: found no file *.instance; wanted instances of jobs with set-ups."));

        double before = LayoutStop.CpuNow().TotalSeconds, seconds = arguments.Seconds > 0 ? arguments.Seconds : UsualSeconds;
        List<WeekRow> rows = [];
        foreach ((string file, LayoutValues values) in files)
        {
            cancellation.ThrowIfCancellationRequested();
            rows.Add(Row(SequenceInstance.Read(file), values, seconds, arguments.ByProcessor, cancellation));
            progress.WriteLine(Invariant($"{rows[^1].Instance}: {rows[^1].Ours}, optimum {rows[^1].Best}, last gain at {rows[^1].LastGainSeconds:0.00} s {rows[^1].Fault}"));
        }

        string all = string.Join('\n', rows.Select(r => Invariant($"{r.Instance} {r.Ours}")));
        return new(
            "week", seconds, arguments.ByProcessor, Environment.ProcessorCount, Seed, arguments.Sample, DateTime.UtcNow.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            rows, LayoutStop.CpuNow().TotalSeconds - before, Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(all))));
    }

    private static WeekRow Row(SequenceInstance instance, LayoutValues values, double seconds, bool byProcessor, CancellationToken cancellation)
    {
        double cpu = LayoutStop.CpuNow().TotalSeconds, lastGain = 0;
        long start = Stopwatch.GetTimestamp();
        using LayoutStop stop = new(seconds, byProcessor, Environment.ProcessorCount, cancellation);
        SequenceAnswer answer = SequenceSearch.Solve(
            Problem(instance), new SearchRules(Seed, Workers: Environment.ProcessorCount), _ => lastGain = Stopwatch.GetElapsedTime(start).TotalSeconds, stop.Token);
        double wall = Stopwatch.GetElapsedTime(start).TotalSeconds;
        IReadOnlyList<string> faults = SequenceChecker.Faults(instance, answer.Order, answer.Cost);
        return new(
            instance.Name, instance.ProcessTimes.Count, answer.Cost, (long?)values.Of(instance.Name, Optimum), wall, LayoutStop.CpuNow().TotalSeconds - cpu, lastGain,
            faults.Count > 0 ? faults[0] : null);
    }

    private static SequenceProblem Problem(SequenceInstance instance) => new(
        [.. instance.ProcessTimes.Select((p, i) => new SequenceJob(Invariant($"{i}"), p, instance.DueDates[i], instance.Weights[i]))],
        instance.FirstSetUps, instance.SetUps);

    private static string Own()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "Laydown.slnx")))
            folder = Path.GetDirectoryName(folder);
        return Path.Combine(folder ?? ".", "tests", "data", "week");
    }
}
