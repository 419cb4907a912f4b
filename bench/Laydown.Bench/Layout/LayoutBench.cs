using System.Diagnostics;
using System.Security.Cryptography;
using System.Text;

namespace Laydown.Bench.Layout;

/// <summary>Solves published instances and judges every layout with a checker that shares nothing with the solvers.</summary>
internal static class LayoutBench
{
    /// <summary>All families found in the folder asked for and in the folders in it.</summary>
    /// <exception cref="InvalidDataException">No family takes a folder, or a file cannot be read.</exception>
    public static LayoutResult Run(BenchArguments arguments, TextWriter progress, CancellationToken cancellation)
    {
        string root = arguments.Instances ?? Own();
        IReadOnlyList<LayoutTask> tasks = [.. Folders(root).SelectMany(f => Tasks(f, arguments.Family))];
        if (tasks.Count == 0)
            throw new InvalidDataException(Invariant($"{root}: found no instance of {arguments.Family ?? "a family the bench knows"}; wanted one of {string.Join(", ", LayoutFamilies.All.Select(f => f.Name))}."));

        double before = LayoutStop.CpuNow().TotalSeconds;
        List<LayoutGroup> groups = [.. tasks.GroupBy(t => (t.Family, t.Variant)).Select(g => Group([.. g], arguments, progress, cancellation))];
        string values = string.Join('\n', groups.SelectMany(g => g.Rows.Select(r => Invariant($"{g.Family} {g.Variant} {r.Instance} {r.Ours:R}"))));
        return new("layout", groups, LayoutStop.CpuNow().TotalSeconds - before, Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(values))));
    }

    private static LayoutGroup Group(IReadOnlyList<LayoutTask> tasks, BenchArguments arguments, TextWriter progress, CancellationToken cancellation)
    {
        LayoutTask one = tasks[0];
        double seconds = one.Seconds ?? (arguments.Seconds > 0 ? arguments.Seconds : 10);
        List<LayoutRow> rows = [];
        foreach (LayoutTask task in tasks.Where((_, i) => i % arguments.Sample == 0))
        {
            cancellation.ThrowIfCancellationRequested();
            rows.Add(Row(task, seconds, arguments, cancellation));
            LayoutRow row = rows[^1];
            progress.WriteLine(Invariant($"{task.Family}, {task.Variant}, {task.Instance}: {row.Ours:0.###} {row.Unit}, best {row.Best}, {row.Seconds:0.00} s {row.Fault}"));
        }

        return new(
            one.Family, one.Variant, one.BestFrom, one.Wanted, one.Sum, seconds, arguments.ByProcessor, Environment.ProcessorCount, arguments.Sample,
            DateTime.UtcNow.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture), rows);
    }

    private static LayoutRow Row(LayoutTask task, double seconds, BenchArguments arguments, CancellationToken cancellation)
    {
        double cpu = LayoutStop.CpuNow().TotalSeconds;
        long start = Stopwatch.GetTimestamp();
        using LayoutStop stop = new(seconds, arguments.ByProcessor, Environment.ProcessorCount, cancellation);
        LayoutAnswer answer = task.Solve(new(seconds, Environment.ProcessorCount, stop.Token));
        double wall = Stopwatch.GetElapsedTime(start).TotalSeconds;
        return new(task.Instance, answer.Ours, answer.Unit, task.Best, answer.Bound, wall, LayoutStop.CpuNow().TotalSeconds - cpu, answer.Faults.Count > 0 ? answer.Faults[0] : null);
    }

    // A folder may be of several families: the same boards cut free and cut edge to edge.
    private static IEnumerable<LayoutTask> Tasks(string folder, string? family) => LayoutFamilies.All
        .Where(f => (family is null || family == f.Name) && f.Takes(folder))
        .SelectMany(f => f.Read(folder, LayoutValues.Of(folder)));

    private static IReadOnlyList<string> Folders(string root) =>
        [root, .. Directory.EnumerateDirectories(root, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal)];

    private static string Own()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "Laydown.slnx")))
            folder = Path.GetDirectoryName(folder);
        return Path.Combine(folder ?? ".", "tests", "data", "layout");
    }
}
