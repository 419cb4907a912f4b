using System.Diagnostics;
using System.Security.Cryptography;
using System.Text;
using Laydown.Cli;
using Laydown.Demo;
using Laydown.Measures;
using Laydown.Plan.Log;
using Laydown.Shop;
using Laydown.Shop.Log;
using Laydown.Store;

namespace Laydown.Bench.Log;

/// <summary>A year of log of 100 000 entries: how long each page takes to open, in the program as it is built for its users.</summary>
internal static class LogBench
{
    private const int Entries = 100_000;
    private const int Times = 21;
    private const int FreshTimes = 7;

    /// <summary>Writes the year into a fresh shop, serves it with the built program, opens every page; some pages as the first ones of fresh processes.</summary>
    public static async Task<LogBenchResult> RunAsync(BenchArguments arguments, CancellationToken cancellation)
    {
        string folder = Directory.CreateTempSubdirectory("laydown-log-").FullName;
        try
        {
            DemoWorld.Write(folder, cancellation);
            Reading<ShopServices> shop = await Wiring.OpenAsync(folder, TimeProvider.System, cancellation);
            using (shop.Value.MakeRun)
                return await MeasureAsync(arguments.Name, shop.Value, cancellation);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task<LogBenchResult> MeasureAsync(string name, ShopServices shop, CancellationToken cancellation)
    {
        string file = new ShopFolder(shop.Folder).StoreFile;
        IReadOnlyList<LogEntry> year = YearOfLog.Entries(Entries, [.. shop.Catalogue.Presses.Select(p => p.Id)]);
        var watch = Stopwatch.StartNew();
        await new SqliteLogStore(file).AppendAllAsync(year, cancellation);
        double written = watch.Elapsed.TotalSeconds;

        // Every page many times in one process; this also warms the client, whose own start is no part of what follows.
        IReadOnlyList<string> pages = await PagesAsync(shop, cancellation);
        List<LogBenchRow> rows = [];
        double cpu;
        using (ServedShop served = await ServedShop.StartAsync(shop.Folder, cancellation))
        {
            TimeSpan before = served.Processor;
            foreach (string page in pages)
                rows.Add(await OpenAsync(served.Client, page, cancellation));
            cpu = (served.Processor - before).TotalSeconds;
        }

        List<FreshRow> fresh = [];
        foreach (string page in new[] { pages[0], "/log/charts?of=Across", pages[^2], "/api/log?rows=500" })
        {
            fresh.Add(await FreshAsync(shop.Folder, page, TimeSpan.Zero, cancellation));
            fresh.Add(await FreshAsync(shop.Folder, page, TimeSpan.FromSeconds(3), cancellation));
        }

        string checksum = await ChecksumAsync(shop, cancellation);
        return new(name, year.Count, year.Count(e => e.Actual is not null), written, new FileInfo(file).Length / 1048576.0, rows, fresh, cpu, checksum);
    }

    // The first page, one in the middle of the year, the last one, and those with a choice.
    private static async Task<IReadOnlyList<string>> PagesAsync(ShopServices shop, CancellationToken cancellation)
    {
        LogCursor middle = new((await shop.Log!.Read.PageAsync(new(Rows: 1), cancellation)).Entries[0].At.ToUnixTimeSeconds() - (182 * 86400), long.MaxValue);
        string press = shop.Catalogue.Presses[0].Id;
        return
        [
            "/log", Invariant($"/log?after={middle}"), "/log?after=1764120000-9223372036854775807", "/log?kind=Remake", Invariant($"/log?press={press}&kind=Stop"), "/log?run=R-year-05000",
            "/log?from=2026-03-01&to=2026-03-31", "/log/charts?of=Across", "/log/charts?of=Thickness", "/log/charts?of=Spoiled", "/log/review?from=2026-10-27&to=2026-11-26",
            "/log/review?from=2025-11-26&to=2026-11-26", "/api/log?rows=500",
        ];
    }

    private static async Task<LogBenchRow> OpenAsync(HttpClient client, string page, CancellationToken cancellation)
    {
        List<double> times = [];
        int bytes = 0;
        for (int i = 0; i < Times; i++)
        {
            var watch = Stopwatch.StartNew();
            bytes = (await client.GetByteArrayAsync(page, cancellation)).Length;
            times.Add(watch.Elapsed.TotalMilliseconds);
        }

        List<double> others = [.. times.Skip(1).Order()];
        return new(page, times[0], others[others.Count / 2], others[^1], bytes);
    }

    private static async Task<FreshRow> FreshAsync(string folder, string page, TimeSpan rest, CancellationToken cancellation)
    {
        List<double> starts = [], answers = [], processor = [];
        for (int i = 0; i < FreshTimes; i++)
        {
            using ServedShop served = await ServedShop.StartAsync(folder, cancellation);
            await Task.Delay(rest, cancellation);
            TimeSpan before = served.Processor;
            var watch = Stopwatch.StartNew();
            await served.Client.GetByteArrayAsync(page, cancellation);
            answers.Add(watch.Elapsed.TotalMilliseconds);
            starts.Add(served.StartMs);
            processor.Add((served.Processor - before).TotalMilliseconds);
        }

        return new(page, rest.TotalSeconds, Middle(starts), Middle(answers), answers.Max(), Middle(processor));
    }

    private static double Middle(List<double> values)
    {
        values.Sort();
        return values[values.Count / 2];
    }

    private static async Task<string> ChecksumAsync(ShopServices shop, CancellationToken cancellation)
    {
        StringBuilder text = new();
        foreach (LogKind kind in Enum.GetValues<LogKind>())
            foreach (LogEntry entry in (await shop.Log!.Read.PageAsync(new(kind, Rows: 500), cancellation)).Entries)
                text.Append(Invariant($"{entry.Number} {entry.At:O}\n"));
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())));
    }
}
