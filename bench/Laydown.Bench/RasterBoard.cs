using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using Laydown.Formats.TiffWriting;
using Laydown.Output.PressFiles;
using Laydown.Raster.Screens;
using Laydown.Raster.Sheets;

namespace Laydown.Bench;

/// <summary>Makes one board in a process of its own, so that its memory is its own.</summary>
internal static class RasterBoard
{
    /// <summary>Word that starts the process.</summary>
    public const string Verb = "raster-board";

    /// <summary>Runs the child and gives what it measured.</summary>
    /// <param name="what">Which board: usual, cold, two-bits.</param>
    /// <param name="folder">Folder that holds <c>square.rgb</c>, <c>square.mask</c>.</param>
    /// <param name="heightMm">Height of the board, mm.</param>
    /// <param name="cancellation">Ends the child.</param>
    public static async Task<BoardRow> ChildAsync(string what, string folder, double heightMm, CancellationToken cancellation)
    {
        using Process child = new()
        {
            StartInfo = new(Environment.ProcessPath!)
            {
                ArgumentList = { Verb, what, folder, heightMm.ToString(CultureInfo.InvariantCulture) },
                RedirectStandardOutput = true,
            },
        };
        child.StartInfo.Environment["DOTNET_gcServer"] = "0";
        child.Start();
        try
        {
            string said = await child.StandardOutput.ReadToEndAsync(cancellation);
            await child.WaitForExitAsync(cancellation);
            return child.ExitCode == 0
                ? JsonSerializer.Deserialize<BoardRow>(said)!
                : throw new InvalidOperationException(Invariant($"board {what}: exit code {child.ExitCode}"));
        }
        finally
        {
            if (!child.HasExited)
                child.Kill(entireProcessTree: true);
        }
    }

    /// <summary>The child.</summary>
    public static void Run(IReadOnlyList<string> words)
    {
        (string what, string folder, double height) = (words[1], words[2], double.Parse(words[3], CultureInfo.InvariantCulture));
        Console.Out.Write(JsonSerializer.Serialize(Make(what, folder, height)));
    }

    private static BoardRow Make(string what, string folder, double heightMm)
    {
        using RasterSheet sheet = Sheet(folder, heightMm);
        DropLevels drops = what == "two-bits" ? new([4, 7, 14]) : new([14]);
        SheetJob[] jobs = [sheet.Colour(drops), sheet.White(drops)];
        SheetEngine[] engines = [.. jobs.Select(j => new SheetEngine(j, Environment.ProcessorCount))];
        if (what == "cold")
            ColdFiles.Forget(sheet.Pictures.Select(p => p.FullPath));
        ProcessMeter.ResetPeak();
        double cpu = ProcessMeter.CpuSeconds(), flush = 0;
        long start = Stopwatch.GetTimestamp();
        List<string> sums = [];
        for (int i = 0; i < jobs.Length; i++)
        {
            string name = Invariant($"layer-{i}");
            flush += what == "cold" ? AsTheProduct(folder, name, engines[i], jobs[i], drops, sums) : Raw(folder, name, engines[i], jobs[i], sums);
        }

        double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds - flush, took = ProcessMeter.CpuSeconds() - cpu, peak = ProcessMeter.PeakMb();
        long bytes = jobs.Sum(j => (long)j.Screen.Inks * j.Rows * (((j.Columns * drops.BitsPerDot) + 7) / 8));
        return new(
            what, (double)sheet.Columns * sheet.Rows / 1e9, jobs.Sum(j => j.Screen.Inks), drops.BitsPerDot, seconds, flush, Disk(folder, bytes), took, peak, engines.Max(e => e.MostBytes) / 1048576.0, string.Join('-', sums));
    }

    // What the disk alone costs: as many bytes, one file, blocks of 4 MiB, flushed.
    private static double Disk(string folder, long bytes)
    {
        foreach (string made in Directory.GetFiles(folder, "layer-*"))
            File.Delete(made);
        byte[] block = new byte[4 << 20];
        new Random(9).NextBytes(block);
        long start = Stopwatch.GetTimestamp();
        using (Microsoft.Win32.SafeHandles.SafeFileHandle file = File.OpenHandle(
            Path.Combine(folder, "disk.raw"), FileMode.Create, FileAccess.Write, FileShare.None, FileOptions.None, bytes))
        {
            for (long at = 0; at < bytes; at += block.Length)
                RandomAccess.Write(file, block.AsSpan(0, (int)Math.Min(block.Length, bytes - at)), at);
            RandomAccess.FlushToDisk(file);
        }

        double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
        File.Delete(Path.Combine(folder, "disk.raw"));
        return seconds;
    }

    private static double Raw(string folder, string name, SheetEngine engine, SheetJob job, List<string> sums)
    {
        using FolderDots dots = new(folder, name, engine, job);
        engine.Run(dots, null, CancellationToken.None);
        long start = Stopwatch.GetTimestamp();
        dots.Flush();
        sums.Add(dots.Checksum);
        return Stopwatch.GetElapsedTime(start).TotalSeconds;
    }

    // TIFF files, each band hashed and journaled, as a run's dots are made.
    private static double AsTheProduct(string folder, string name, SheetEngine engine, SheetJob job, DropLevels drops, List<string> sums)
    {
        string[] paths = [.. Enumerable.Range(0, job.Screen.Inks).Select(i => Path.Combine(folder, Invariant($"{name}-{i}.tif")))];
        DotHeader[] headers = [.. paths.Select(_ => new DotHeader(
            job.Columns, job.Rows, drops.BitsPerDot, RasterSheet.Dpi, RasterSheet.Dpi, engine.BandRows, Laydown.Formats.TiffWriting.DotPacking.None, "bench", "bench"))];
        using (DotSink sink = DotSink.Open(
            paths, headers, Path.Combine(folder, name + ".journal"), job.Pieces.Count, _ => { }, CancellationToken.None))
        {
            engine.Run(sink, null, CancellationToken.None);
            sink.Finish();
            sums.Add(string.Join('.', Enumerable.Range(0, job.Screen.Inks).Select(i => sink.Totals.Of(i)[1])));
        }

        long start = Stopwatch.GetTimestamp();
        foreach (string path in paths)
        {
            using Microsoft.Win32.SafeHandles.SafeFileHandle file = File.OpenHandle(path, FileMode.Open, FileAccess.ReadWrite);
            RandomAccess.FlushToDisk(file);
        }

        return Stopwatch.GetElapsedTime(start).TotalSeconds;
    }

    private static RasterSheet Sheet(string folder, double heightMm)
    {
        byte[] natural = File.ReadAllBytes(Path.Combine(folder, "square.rgb")), mask = File.ReadAllBytes(Path.Combine(folder, "square.mask"));
        return RasterSheet.Write(folder, natural, mask, (int)Math.Sqrt(mask.Length), heightMm);
    }
}
