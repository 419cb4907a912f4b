using System.Diagnostics;
using System.Text.Json;
using Laydown.Cli;
using Laydown.Demo.Descriptions;
using Laydown.Edges.Tests.Artwork;
using Laydown.Edges.Tests.Store;
using Laydown.Edges.Tests.UseCases;
using Laydown.Formats.Json;
using Laydown.Plan.Orders;

namespace Laydown.Edges.Tests.CommandLines;

/// <summary>A small shop on disk for the built program: the demo's catalogue with Ghostscript's own CMYK profile, orders by the test.</summary>
internal sealed class CliShop : IDisposable
{
    public const string Today = "2026-11-25";
    private const string Profile = "/usr/share/color/icc/ghostscript/default_cmyk.icc";
    private readonly TempFolder temp = new();

    public CliShop()
    {
        DemoCatalogue.Write(Path.Combine(Folder, "catalogue"), CancellationToken.None);
        string profiles = Directory.CreateDirectory(Path.Combine(Folder, "catalogue", "profiles")).FullName;
        foreach (string profile in DemoCatalogue.Profiles)
            File.Copy(Profile, Path.Combine(profiles, profile));
        Directory.CreateDirectory(Path.Combine(Folder, "orders"));
    }

    public string Folder => temp.Path;

    /// <summary>A board of 200 × 100 mm.</summary>
    public static Item Board(string id, string artwork) => new(
        id, "A board", artwork, 200, 100, 0, 1, "foamed-pvc-3", new BuildWish(false, false, false, null, null, 0, 0, false),
        [new(FinishingKind.CutSquare, 1)], new DateOnly(2026, 12, 4), 2, 1, null);

    /// <summary>A PDF page with two tints, 200 × 100 mm unless another size is given.</summary>
    public static byte[] Pdf(double widthMm = 200, double heightMm = 100)
    {
        string box = Invariant($"[0 0 {widthMm / 25.4 * 72:0.###} {heightMm / 25.4 * 72:0.###}]");
        return HandPdf.Page(Invariant($"/MediaBox{box}/TrimBox{box}"), "", "0 0 0 1 k 30 30 60 60 re f 1 0 0 0 k 120 40 200 100 re f");
    }

    public void Put(string orderId, params (Item Item, byte[] Artwork)[] lines)
    {
        string folder = Directory.CreateDirectory(Path.Combine(Folder, "orders", orderId)).FullName;
        File.WriteAllBytes(Path.Combine(folder, "order.json"), LaydownJson.ToBytes(Samples.Order(orderId, [.. lines.Select(l => l.Item)])));
        foreach ((Item item, byte[] artwork) in lines)
            File.WriteAllBytes(Path.Combine(folder, item.Artwork), artwork);
    }

    /// <summary>Runs a command within this process, with <c>--json</c>, and reads its answer.</summary>
    public async Task<(int Code, JsonElement Answer)> AskAsync(params string[] words)
    {
        await using StringWriter output = new();
        await using StringWriter error = new();
        int code = await CommandLine.RunAsync([.. words, "--json", "--shop", Folder, "--today", Today], output, error, CancellationToken.None);
        return (code, JsonDocument.Parse(output.ToString()).RootElement);
    }

    /// <summary>Starts the built program.</summary>
    /// <param name="shell">Commands of the shell before it, such as limits; the program takes the shell's place.</param>
    /// <param name="path">The child's PATH, or null for ours.</param>
    /// <param name="words">The command line; <c>--shop</c> and <c>--today</c> are added.</param>
    public Process Start(string shell, string? path, params string[] words)
    {
        string program = Path.Combine(AppContext.BaseDirectory, "laydown.dll");
        ProcessStartInfo start = new("/bin/bash") { RedirectStandardOutput = true, RedirectStandardError = true };
        start.ArgumentList.Add("-c");
        start.ArgumentList.Add(Invariant($"{shell} exec /usr/bin/env --default-signal=INT \"$0\" \"$@\""));
        foreach (string word in (string[])[Found("dotnet"), program, .. words, "--shop", Folder, "--today", Today])
            start.ArgumentList.Add(word);
        if (path is not null)
            start.Environment["PATH"] = path;
        return Process.Start(start) ?? throw new InvalidOperationException("The program did not start.");
    }

    /// <summary>Runs the built program to its end.</summary>
    public async Task<(int Code, string Output, string Error)> RunAsync(string shell, string? path, params string[] words)
    {
        using Process child = Start(shell, path, words);
        Task<string> output = child.StandardOutput.ReadToEndAsync();
        Task<string> error = child.StandardError.ReadToEndAsync();
        await child.WaitForExitAsync();
        return (child.ExitCode, await output, await error);
    }

    public void Dispose() => temp.Dispose();

    private static string Found(string program) => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(':')
        .Select(f => Path.Combine(f, program)).First(File.Exists);
}
