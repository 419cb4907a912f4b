using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using Laydown.Raster.Screens;
using Laydown.Raster.Sheets;

namespace Laydown.Bench;

/// <summary>Makes one board in a process of its own, so that its memory is its own.</summary>
internal static class RasterBoard
{
    /// <summary>Word that starts the process.</summary>
    public const string Verb = "raster-board";

    private const int Side = 4096;

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
            using FolderDots dots = new(folder, Invariant($"layer-{i}"), engines[i], jobs[i]);
            engines[i].Run(dots, null, CancellationToken.None);
            long flushing = Stopwatch.GetTimestamp();
            dots.Flush();
            flush += Stopwatch.GetElapsedTime(flushing).TotalSeconds;
            sums.Add(dots.Checksum);
        }

        double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds - flush;
        return new(
            what, (double)sheet.Columns * sheet.Rows / 1e9, jobs.Sum(j => j.Screen.Inks), drops.BitsPerDot, seconds, flush, ProcessMeter.CpuSeconds() - cpu,
            ProcessMeter.PeakMb(), engines.Max(e => e.MostBytes) / 1048576.0, string.Join('-', sums));
    }

    private static RasterSheet Sheet(string folder, double heightMm)
    {
        byte[] natural = File.ReadAllBytes(Path.Combine(folder, "square.rgb")), mask = File.ReadAllBytes(Path.Combine(folder, "square.mask"));
        return RasterSheet.Write(folder, natural, mask, (int)Math.Sqrt(mask.Length), heightMm);
    }
}
