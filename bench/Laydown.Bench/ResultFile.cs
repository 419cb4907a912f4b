using System.Globalization;
using System.Text.Json;
using Laydown.Bench.Layout;
using Laydown.Bench.Log;
using Laydown.Bench.Week;
using Laydown.Formats.Json;

namespace Laydown.Bench;

/// <summary>Prints a result beside the last kept one of this machine, and keeps it.</summary>
internal static class ResultFile
{
    private const string Schema = "laydown/bench";

    /// <summary>Prints the demo day, writes to the file asked for, and keeps the result for the next time.</summary>
    public static Task KeepAsync(SpineResult result, BenchArguments arguments, TextWriter output, CancellationToken cancellation) =>
        KeepAsync(result.Bench, result, "dayCpuSeconds", before => Say(result, before, output), arguments, output, cancellation);

    /// <summary>The same for the colour rooms.</summary>
    public static Task KeepAsync(ColourResult result, BenchArguments arguments, TextWriter output, CancellationToken cancellation) =>
        KeepAsync(result.Bench, result, "cpuSeconds", before => Say(result, before, output), arguments, output, cancellation);

    /// <summary>The same for panels.</summary>
    public static Task KeepAsync(PanelResult result, BenchArguments arguments, TextWriter output, CancellationToken cancellation) =>
        KeepAsync(result.Bench, result, "cpuSeconds", before => Say(result, before, output), arguments, output, cancellation);

    /// <summary>The same for the raster engine.</summary>
    public static Task KeepAsync(RasterResult result, BenchArguments arguments, TextWriter output, CancellationToken cancellation) =>
        KeepAsync(result.Bench, result, "cpuSeconds", before => Say(result, before, output), arguments, output, cancellation);

    /// <summary>The same for a year of log.</summary>
    public static Task KeepAsync(LogBenchResult result, BenchArguments arguments, TextWriter output, CancellationToken cancellation) =>
        KeepAsync(result.Bench, result, "cpuSeconds", before => Say(result, before, output), arguments, output, cancellation);

    /// <summary>The same for layouts; on wish also kept by family, and the table written.</summary>
    public static async Task KeepAsync(LayoutResult result, BenchArguments arguments, TextWriter output, CancellationToken cancellation)
    {
        await KeepAsync(result.Bench, result, "cpuSeconds", before => Say(result, before, output), arguments, output, cancellation);
        if (!arguments.Keep)
            return;

        string folder = Environment.GetEnvironmentVariable("LAYDOWN_BENCH_RESULTS") ?? Path.Combine("bench", "results");
        await LayoutTable.KeepAsync(result, Path.Combine(folder, "layout"), cancellation);
        await LayoutTable.WriteAsync(Path.Combine(folder, "layout"), Path.Combine(folder, "..", "..", "docs", "benchmarks", "layout.md"), cancellation);
    }

    /// <summary>The same for sequences; on wish the table is written.</summary>
    public static async Task KeepAsync(WeekResult result, BenchArguments arguments, TextWriter output, CancellationToken cancellation)
    {
        await KeepAsync(result.Bench, result, "cpuSeconds", before => Say(result, before, output), arguments, output, cancellation);
        if (!arguments.Keep)
            return;

        string folder = Environment.GetEnvironmentVariable("LAYDOWN_BENCH_RESULTS") ?? Path.Combine("bench", "results");
        await KeptTable.WriteAsync(result, Path.Combine(folder, "week", "sequences.json"), WeekTable.Text(result), Path.Combine(folder, "..", "..", "docs", "benchmarks", "week.md"), cancellation);
    }

    /// <summary>The same for the planner; on wish the table is written.</summary>
    public static async Task KeepAsync(PlannerResult result, BenchArguments arguments, TextWriter output, CancellationToken cancellation)
    {
        await KeepAsync(result.Bench, result, "cpuSeconds", _ => output.WriteLine(PlannerTable.Text(result)), arguments, output, cancellation);
        if (!arguments.Keep)
            return;

        string folder = Environment.GetEnvironmentVariable("LAYDOWN_BENCH_RESULTS") ?? Path.Combine("bench", "results");
        await KeptTable.WriteAsync(result, Path.Combine(folder, "week", "planner.json"), PlannerTable.Text(result), Path.Combine(folder, "..", "..", "docs", "benchmarks", "planner.md"), cancellation);
    }

    private static async Task KeepAsync<T>(
        string name, T result, string cpuField, Action<double?> say, BenchArguments arguments, TextWriter output,
        CancellationToken cancellation)
        where T : notnull
    {
        string folder = Environment.GetEnvironmentVariable("LAYDOWN_BENCH_RESULTS") ?? Path.Combine("bench", "results");
        string kept = Path.Combine(folder, Invariant($"{name}.local.json"));
        double? before = await CpuOfAsync(kept, cpuField, cancellation);
        using MemoryStream stream = new();
        LaydownJson.WriteResult(stream, Schema, 1, result);
        byte[] json = stream.ToArray();
        if (arguments.Json)
            await output.WriteAsync(System.Text.Encoding.UTF8.GetString(json));
        else
            say(before);

        Directory.CreateDirectory(folder);
        foreach (string? path in (string?[])[kept, arguments.Out])
            if (path is not null)
                await File.WriteAllBytesAsync(path, json, cancellation);
    }

    private static void Say(WeekResult result, double? before, TextWriter output)
    {
        output.WriteLine(Invariant($"mean gap over {result.LargeCount} instances with an optimum above 1000: {result.MeanGapPercent:0.000} %; optima met: {result.MetLarge} of these, {result.Met} of {result.Known}; "));
        output.WriteLine(Invariant($"{result.Failed} failed; {result.BudgetSeconds:0.##} s {(result.ByProcessor ? "of each processor" : "wall")}, {result.Workers} workers"));
        output.WriteLine(Invariant($"processor time {result.CpuSeconds:0.0} s, checksum {result.Checksum}"));
        output.WriteLine(before is > 0
            ? Invariant($"ratio to the last kept result of this machine, processor time: {result.CpuSeconds / before:0.00}")
            : "no kept result of this machine yet");
    }

    private static void Say(LayoutResult result, double? before, TextWriter output)
    {
        foreach (LayoutGroup group in result.Groups)
        {
            output.WriteLine(Invariant($"{group.Family}, {group.Variant}: {group.Words} over {group.Rows.Count} instances, {group.Failed} failed; ")
                + Invariant($"{group.BudgetSeconds:0.##} s {(group.ByProcessor ? "of each processor" : "wall")}, {group.Workers} workers; wanted {group.Wanted} ({group.BestFrom})"));
            foreach (LayoutRow row in group.Rows.Where(r => r.Fault is not null))
                output.WriteLine(Invariant($"  {row.Instance}: {row.Fault}"));
        }

        output.WriteLine(Invariant($"processor time {result.CpuSeconds:0.0} s, checksum {result.Checksum}"));
        output.WriteLine(before is > 0
            ? Invariant($"ratio to the last kept result of this machine, processor time: {result.CpuSeconds / before:0.00}")
            : "no kept result of this machine yet");
    }

    private static void Say(ColourResult result, double? before, TextWriter output)
    {
        output.WriteLine("set                   n     mean      p95      max   wall s    cpu s  what");
        foreach (ColourRow row in result.Rows)
        {
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{row.Set,-18}{row.Count,5}{row.Mean,9:0.000}{row.P95,9:0.000}{row.Max,9:0.00}{row.Seconds,9:0.0}{row.CpuSeconds,9:0.0}  {row.What}"));
        }

        output.WriteLine(Invariant($"peak {result.PeakMb:0} MiB, checksum {result.Checksum}"));
        output.WriteLine(before is > 0
            ? Invariant($"ratio to the last kept result of this machine, processor time: {result.CpuSeconds / before:0.00}")
            : "no kept result of this machine yet");
    }

    private static void Say(RasterResult result, double? before, TextWriter output)
    {
        output.WriteLine("stage                          Mpx/s     beside      ratio   error  what");
        foreach (RasterRow row in result.Rows)
        {
            string beside = row.BesideMpxPerS is { } other ? string.Create(CultureInfo.InvariantCulture, $"{other,11:0.0}{row.Ratio,11:0.0}") : new(' ', 22);
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture, $"{row.Stage,-25}{row.MpxPerS,11:0}{beside}{row.Error,8:0.00}  {row.Variant}; beside {row.Beside ?? "none"}; wanted {row.Wanted ?? "-"}"));
        }

        output.WriteLine("board            Gpx  inks  bits   wall s   flush s   disk s    cpu s   Mpx/s   peak MiB (engine)");
        foreach (BoardRow row in result.Boards)
        {
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{row.What,-13}{row.Gigapixels,7:0.00}{row.Inks,6}{row.Bits,6}{row.Seconds,9:0.00}{row.FlushSeconds,10:0.00}{row.DiskSeconds,9:0.00}{row.CpuSeconds,9:0.00}{row.MpxPerS,8:0}{row.PeakMb,11:0} ({row.PeakFormulaMb:0})"));
        }

        foreach (OverlapRow page in result.Pages)
        {
            output.WriteLine(Invariant($"{page.What}, {page.Megapixels:0} Mpx: rendered {page.RasterSeconds:0.0} s, the rest {page.RestSeconds:0.0} s, together {page.TogetherSeconds:0.0} s ")
                + Invariant($"= {page.Ratio:0.00} of the longer (wanted at most 1.25)"));
        }

        output.WriteLine(Invariant($"chain: {result.ChainMpxPerS:0.0} Mpx/s wall ({result.Chain}); ratio {result.ChainRatio:0.0}"));
        output.WriteLine(Invariant($"processor time grows with pixels to the power {result.GrowthExponent:0.000}; lanes {result.Lanes}; checksum {result.Checksum}"));
        output.WriteLine(before is > 0
            ? Invariant($"ratio to the last kept result of this machine, processor time: {result.CpuSeconds / before:0.00}")
            : "no kept result of this machine yet");
    }

    private static void Say(PanelResult result, double? before, TextWriter output)
    {
        output.WriteLine("pair          Mpx   day mean   p95  night mean   p95  ghost p95  unreach %   lift  expos.   wall s    cpu s  peak MiB");
        foreach (PanelRow row in result.Rows)
        {
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{row.Pair,-12}{row.Megapixels,5:0.0}{row.Day.Mean,11:0.00}{row.Day.P95,6:0.0}{row.Night.Mean,12:0.00}{row.Night.P95,6:0.0}{row.GhostP95,11:0.00}{row.UnreachablePercent,11:0.0}{row.LiftPercent,7:0}{row.NightExposure,8:0.00}{row.Seconds,9:0.0}{row.CpuSeconds,9:0.0}{row.PeakMb,10:0}"));
        }

        foreach (PanelRefusal refusal in result.Refused)
            output.WriteLine(Invariant($"{refusal.Pair,-12}refused: {string.Join(' ', refusal.Faults)}"));
        if (result.GrowthExponent is { } exponent)
            output.WriteLine(Invariant($"processor time grows with pixels to the power {exponent:0.00}; table against exact solve: mean {result.TableErrorMean:0.00}, p99 {result.TableErrorP99:0.00} dE00"));
        if (result.PreviewMilliseconds is { } preview)
            output.WriteLine(Invariant($"preview of 1 Mpx after a change: {preview:0} ms"));
        output.WriteLine(Invariant($"checksum {result.Checksum}"));
        output.WriteLine(before is > 0
            ? Invariant($"ratio to the last kept result of this machine, processor time: {result.CpuSeconds / before:0.00}")
            : "no kept result of this machine yet");
    }

    private static void Say(LogBenchResult result, double? before, TextWriter output)
    {
        output.WriteLine(Invariant($"{result.Entries} entries, {result.RunsDone} runs done, written in {result.WriteSeconds:0.0} s, {result.FileMb:0.0} MiB"));
        output.WriteLine("first ms  median ms  most ms    bytes  page");
        foreach (LogBenchRow row in result.Rows)
            output.WriteLine(Invariant($"{row.FirstMs,8:0}{row.MedianMs,11:0.0}{row.MostMs,9:0}{row.Bytes,9}  {row.Page}"));
        output.WriteLine(Invariant($"processor time {result.CpuSeconds:0.0} s, checksum {result.Checksum}"));
        output.WriteLine(before is > 0
            ? Invariant($"ratio to the last kept result of this machine, processor time: {result.CpuSeconds / before:0.00}")
            : "no kept result of this machine yet");
    }

    private static void Say(SpineResult result, double? before, TextWriter output)
    {
        output.WriteLine("station    wall s    cpu s   peak MiB");
        foreach (StationResult station in result.Stations)
            output.WriteLine(Line(station.Name, station.WallSeconds, station.CpuSeconds, station.PeakMb));
        output.WriteLine(Line("day", result.DayWallSeconds, result.DayCpuSeconds, result.PeakMb));
        output.WriteLine(Invariant($"{result.Runs} runs, {result.Held} items held back, {result.Rounds} round(s)"));
        output.WriteLine(Invariant($"checksum {result.Checksum}"));
        output.WriteLine(before is > 0
            ? Invariant($"ratio to the last kept result of this machine, processor time: {result.DayCpuSeconds / before:0.00}")
            : "no kept result of this machine yet");
    }

    private static string Line(string name, double wall, double cpu, double peak) => string.Create(
        CultureInfo.InvariantCulture, $"{name,-8}{wall,9:0.00}{cpu,9:0.00}{peak,11:0}");

    private static async Task<double?> CpuOfAsync(string path, string field, CancellationToken cancellation)
    {
        if (!File.Exists(path))
            return null;
        using var document = JsonDocument.Parse(await File.ReadAllBytesAsync(path, cancellation));
        return document.RootElement.TryGetProperty(field, out JsonElement seconds) ? seconds.GetDouble() : null;
    }
}
