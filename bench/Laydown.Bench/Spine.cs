using System.Diagnostics;
using System.Security.Cryptography;
using System.Text;
using Laydown.Cli;
using Laydown.Demo;
using Laydown.Shop;
using Laydown.Shop.Run;

namespace Laydown.Bench;

/// <summary>The demo day in a fresh folder, measured station by station.</summary>
internal static class Spine
{
    /// <summary>Does the day once, or again and again until the seconds asked for are over; keeps the least time of each station.</summary>
    public static async Task<SpineResult> RunAsync(BenchArguments arguments, CancellationToken cancellation)
    {
        Stopwatch watch = Stopwatch.StartNew();
        List<(IReadOnlyList<StationResult> Stations, DayReport Report)> rounds = [];
        do
        {
            rounds.Add(await RoundAsync(arguments.Instances, cancellation));
        }
        while (watch.Elapsed.TotalSeconds < arguments.Seconds);

        List<StationResult> stations = [.. rounds[0].Stations.Select((s, i) => new StationResult(
            s.Name,
            rounds.Min(r => r.Stations[i].WallSeconds),
            rounds.Min(r => r.Stations[i].CpuSeconds),
            rounds.Max(r => r.Stations[i].PeakMb)))];
        List<StationResult> day = [.. stations.Where(s => s.Name != "demo")];
        DayReport report = rounds[0].Report;
        List<string> sums = [.. rounds.Select(r => Checksum(r.Report)).Distinct()];
        if (sums.Count > 1)
            throw new InvalidOperationException("Two rounds gave different files; wanted the same bytes for the same input.");
        return new(
            arguments.Name, rounds.Count, stations, day.Sum(s => s.WallSeconds), day.Sum(s => s.CpuSeconds), stations.Max(s => s.PeakMb),
            report.Runs.Count, report.Held.Count, sums[0]);
    }

    private static async Task<(IReadOnlyList<StationResult> Stations, DayReport Report)> RoundAsync(string? instances, CancellationToken cancellation)
    {
        string folder = Directory.CreateTempSubdirectory("laydown-bench-").FullName;
        try
        {
            Meter meter = new();
            meter.Report(new("demo", 0, false, ""));
            if (instances is null)
                DemoWorld.Write(folder, DemoWorld.Day, cancellation);
            else
                Copy(instances, folder, cancellation);
            meter.Report(new("demo", 0, true, ""));

            DateClock clock = new(DemoWorld.Day);
            ShopServices shop = (await Wiring.OpenAsync(folder, clock, cancellation)).Value;
            using (shop.MakeRun)
            {
                DayReport report = await new WorkDay(shop, TimeProvider.System).WorkAsync(DemoWorld.Day, meter, cancellation);
                return (meter.Stations, report);
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static void Copy(string from, string to, CancellationToken cancellation)
    {
        foreach (string part in (string[])["catalogue", "orders"])
        {
            foreach (string file in Directory.EnumerateFiles(Path.Combine(from, part), "*", SearchOption.AllDirectories))
            {
                cancellation.ThrowIfCancellationRequested();
                string target = Path.Combine(to, Path.GetRelativePath(from, file));
                Directory.CreateDirectory(Path.GetDirectoryName(target) ?? to);
                File.Copy(file, target);
            }
        }
    }

    private static string Checksum(DayReport report)
    {
        IEnumerable<string> lines = report.Runs.SelectMany(r => r.Files.Select(f => Invariant($"{r.Run.Id}/{f.Name} {f.Sha256}")));
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', lines.Order(StringComparer.Ordinal)))));
    }

    private sealed class Meter : IProgress<DayStation>
    {
        private long start;
        private double cpu;

        public List<StationResult> Stations { get; } = [];

        public void Report(DayStation value)
        {
            if (!value.Done)
            {
                GC.Collect();
                ProcessMeter.ResetPeak();
                start = Stopwatch.GetTimestamp();
                cpu = ProcessMeter.CpuSeconds();
                return;
            }

            Stations.Add(new(
                value.Name, Stopwatch.GetElapsedTime(start).TotalSeconds, ProcessMeter.CpuSeconds() - cpu, ProcessMeter.PeakMb()));
        }
    }

    // One day and one instant, so that two benches write the same bytes.
    private sealed class DateClock(DateOnly day) : TimeProvider
    {
        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

        public override DateTimeOffset GetUtcNow() => new(day, new TimeOnly(9, 0), TimeSpan.Zero);
    }
}
