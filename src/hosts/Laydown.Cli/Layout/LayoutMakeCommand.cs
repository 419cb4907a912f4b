using System.CommandLine;
using System.Diagnostics;
using Laydown.Cli.Words;
using Laydown.Layout.Jobs;
using Laydown.Layout.Search;
using Laydown.Measures;
using Laydown.Shop.Layout;

namespace Laydown.Cli.Layout;

/// <summary><c>laydown layout make JOB.json</c>.</summary>
internal static class LayoutMakeCommand
{
    public static Command Make(Shared shared)
    {
        Options options = new();
        Command command = new("make", "Lays out the pieces of a job; Ctrl-C or the end of the time keeps the best so far.");
        command.Arguments.Add(options.Job);
        foreach (Option option in new Option[] { options.Shared.Out, options.Shared.Formats, options.Seconds, options.Iterations, options.Seed, options.Workers })
            command.Options.Add(option);
        command.SetAction((parsed, cancellation) => MakeAsync(parsed, shared.Answer(parsed), options, shared.Now(parsed), cancellation));
        return command;
    }

    private static async Task<int> MakeAsync(ParseResult parsed, Answer answer, Options options, DateTimeOffset made, CancellationToken cancellation)
    {
        await Task.Yield();
        if (options.Fault(parsed) is { } wrong)
            return answer.Fail(ExitCodes.BadUsage, wrong, []);
        string path = Path.GetFullPath(parsed.GetRequiredValue(options.Job));
        Reading<JobRead> read = Wiring.JobReader().Job(path);
        if (!read.IsTaken)
            return answer.Fail(ExitCodes.Refused, Invariant($"{Path.GetFileName(path)} cannot be laid out."), read.Faults);

        (JobLayout layout, string ended, double seconds) = Searched(parsed, answer, options, read.Value.Job, cancellation);
        Reading<IReadOnlyList<string>> written = Wiring.LayoutWriter().Write(layout, options.Shared.FolderOf(parsed, path), options.Shared.FormatsOf(parsed)!, made);
        if (!written.IsTaken)
            return answer.Fail(ExitCodes.Refused, "The layout cannot be written.", written.Faults);
        LayoutWords.Say(answer, layout, read.Value.Findings, written.Value, options.Shared.FolderOf(parsed, path), ended, seconds);
        return layout.Unplaced.Count > 0 ? ExitCodes.Held : ExitCodes.Done;
    }

    private static (JobLayout Layout, string Ended, double Seconds) Searched(
        ParseResult parsed, Answer answer, Options options, LayoutJob job, CancellationToken cancellation)
    {
        long iterations = parsed.GetValue(options.Iterations) ?? long.MaxValue;
        double? seconds = parsed.GetValue(options.Seconds) ?? (iterations == long.MaxValue ? 10 : null);
        using CancellationTokenSource time = new();
        if (seconds is { } some)
            time.CancelAfter(TimeSpan.FromSeconds(some));
        using CancellationTokenSource stop = CancellationTokenSource.CreateLinkedTokenSource(time.Token, cancellation);
        Stopwatch watch = Stopwatch.StartNew();
        void Better(JobLayout found)
        {
            if (!answer.AsJson)
                answer.Error.WriteLine(Invariant($"{watch.Elapsed.TotalSeconds,6:0.0} s  {LayoutWords.Line(found)}"));
        }

        SearchRules rules = new(parsed.GetValue(options.Seed), iterations, parsed.GetValue(options.Workers));
        JobLayout layout = LayOutJob.Solve(job, rules, Better, stop.Token);
        string ended = cancellation.IsCancellationRequested ? "stopped; this is the best so far" : time.IsCancellationRequested ? "time is up" : "search ended";
        return (layout, ended, watch.Elapsed.TotalSeconds);
    }

    private sealed class Options
    {
        public LayoutOptions Shared { get; } = new();

        public Argument<string> Job { get; } = new("job") { Description = "The job, JSON as in schemas/layout-job.schema.json." };

        public Option<double?> Seconds { get; } = new("--seconds") { Description = "How long to look for better, seconds (default: 10, or no limit with --iterations)." };

        public Option<long?> Iterations { get; } = new("--iterations") { Description = "How many iterations to look for better: the same number and seed give the same layout." };

        public Option<int> Seed { get; } = new("--seed") { Description = "Seed of the search.", DefaultValueFactory = _ => 1 };

        public Option<int> Workers { get; } = new("--workers") { Description = "Threads.", DefaultValueFactory = _ => Math.Clamp(Environment.ProcessorCount, 1, 8) };

        public string? Fault(ParseResult parsed) =>
            parsed.GetValue(Seconds) is { } s && !(s is >= 0 and <= 86_400) ? Invariant($"--seconds: found {s}; wanted 0 to 86400.")
            : parsed.GetValue(Iterations) is < 0 ? Invariant($"--iterations: found {parsed.GetValue(Iterations)}; wanted 0 or more.")
            : parsed.GetValue(Workers) is < 1 or > 64 ? Invariant($"--workers: found {parsed.GetValue(Workers)}; wanted 1 to 64.")
            : Shared.FormatsOf(parsed) is null ? Invariant($"--formats: found {parsed.GetValue(Shared.Formats)}; wanted some of json, svg, dxf, pdf.")
            : null;
    }
}
