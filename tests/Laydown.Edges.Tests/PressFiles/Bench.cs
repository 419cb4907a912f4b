using System.Diagnostics;
using Laydown.Measures;
using Laydown.Shop.Artwork;
using Laydown.Shop.Run;
using Microsoft.Extensions.Time.Testing;
using NetVips;
using Xunit;

namespace Laydown.Edges.Tests.PressFiles;

/// <summary>A temporary folder with runs and scratch, and a way to make a run in it.</summary>
internal sealed class Bench : IDisposable
{
    // libvips warns of more than four inks in a separated file; that is what these files are.
    static Bench() => Log.SetLogHandler("VIPS", NetVips.Enums.LogLevelFlags.Warning, (_, _, _) => { });

    public string Root { get; } = Directory.CreateTempSubdirectory("laydown-press-files-").FullName;

    public string Runs => Path.Combine(Root, "runs");

    public string Scratch => Path.Combine(Root, "scratch");

    public string Pages => Directory.CreateDirectory(Path.Combine(Root, "pages")).FullName;

    public string InRun(string name) => Path.Combine(Runs, "R-1", name);

    public Laydown.Output.PressFiles.PressFiles Maker(IPageRenderer renderer, long budget = 80_000_000) =>
        new(renderer, new PlainPapers(), new FakeTimeProvider(new DateTimeOffset(2026, 11, 26, 8, 0, 0, TimeSpan.Zero)), Scratch) { PixelBudget = budget };

    public async Task<IReadOnlyList<ManifestEntry>> MakeAsync(IPageRenderer renderer, RunContext context)
    {
        Reading<IReadOnlyList<ManifestEntry>> made = await Maker(renderer).MakeAsync(context, Runs, new Listener(), CancellationToken.None);
        Assert.True(made.IsTaken, string.Join("\n", made.Faults));
        return made.Value;
    }

    /// <summary>Pixels of a TIFF as vips reads them: pixel after pixel, all bands.</summary>
    public static (byte[] Pixels, int Width, int Height, int Bands) Vips(string path)
    {
        using Image image = Image.NewFromFile(path);
        return (image.WriteToMemory<byte>(), image.Width, image.Height, image.Bands);
    }

    public static string Tool(string name, params string[] arguments)
    {
        ProcessStartInfo start = new(name, arguments) { RedirectStandardOutput = true, RedirectStandardError = true };
        using Process process = Process.Start(start)!;
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string text = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, name + ": " + errors.Result);
        return text;
    }

    public void Dispose() => Directory.Delete(Root, recursive: true);
}
