using System.Diagnostics;
using System.Text.Json;
using Laydown.Cli;
using Laydown.Plan.Orders;
using Xunit;

namespace Laydown.Edges.Tests.CommandLines;

/// <summary>The built program making dots, killed at random moments and gone on with: the bytes are those of an undisturbed make.</summary>
public sealed class DotsKillLawTests : IDisposable
{
    private const string Run = "R-20261125-01";
    private const int Kills = 16;

    private readonly CliShop shop = new();

    public void Dispose() => shop.Dispose();

    [Theory]
    [InlineData("none", Kills / 2, 5)]
    [InlineData("deflate", Kills / 2, 6)]
    public async Task Killed_at_random_moments_and_gone_on_with_the_dots_have_the_same_bytes(string compression, int kills, int seed)
    {
        await PlanAsync();
        string[] make = ["run", "dots", Run, "--bits", "1", "--compression", compression, "--json"];
        Stopwatch watch = Stopwatch.StartNew();
        (int code, string undisturbed, _) = await shop.RunAsync("", null, make);
        Assert.Equal(ExitCodes.Done, code);
        double longest = watch.Elapsed.TotalMilliseconds;

        // What was made before a kill is kept, so the next make may end sooner than the first did: the time to kill in shrinks with every make that ended.
        Random random = new(seed);
        int killed = 0;
        for (int attempt = 0; killed < kills && attempt < 4 * kills; attempt++)
        {
            watch.Restart();
            using Process child = shop.Start("", null, [.. make, "--resume"]);
            Task<string> output = child.StandardOutput.ReadToEndAsync();
            _ = child.StandardError.ReadToEndAsync();
            if (child.WaitForExit((int)(longest * (0.2 + (0.8 * random.NextDouble())))))
            {
                longest = Math.Min(longest, watch.Elapsed.TotalMilliseconds);
                Same(undisturbed, await output);
                continue;
            }

            // The folder of the run is whole at every moment: with its dots, or without.
            killed++;
            child.Kill();
            await child.WaitForExitAsync();
            Whole();
        }

        (int last, string resumed, _) = await shop.RunAsync("", null, [.. make, "--resume"]);
        Assert.Equal(ExitCodes.Done, last);
        Same(undisturbed, resumed);
        Whole();
        Assert.Equal(kills, killed);
    }

    [Fact]
    public async Task A_file_that_outgrows_the_disk_is_told_and_the_make_is_gone_on_with_when_there_is_room()
    {
        await PlanAsync();
        string[] make = ["run", "dots", Run, "--bits", "1", "--json"];
        string small = "trap '' XFSZ; ulimit -f 9216; export DOTNET_EnableWriteXorExecute=0;";
        (int code, string output, _) = await shop.RunAsync(small, null, make);
        Assert.Equal(ExitCodes.Refused, code);
        Assert.NotEmpty(JsonDocument.Parse(output).RootElement.GetProperty("faults").EnumerateArray());
        Whole();
        (code, _, _) = await shop.RunAsync("", null, [.. make, "--resume"]);
        Assert.Equal(ExitCodes.Done, code);
    }

    // One blank of 480 × 640 mm with tints over most of it, its other press files made.
    private async Task PlanAsync()
    {
        Item item = CliShop.Board("TW-1-1", "board.pdf") with { StockId = "foam-blank", WidthMm = 480, HeightMm = 640, Finishing = [new(FinishingKind.Pack, 1)] };
        shop.Put("TW-1", (item, CliShop.Pdf(480, 640)));
        (int code, string output, _) = await shop.RunAsync("", null, "day", "--json");
        Assert.Equal(ExitCodes.Done, code);
        Assert.Equal(Run, Assert.Single(JsonDocument.Parse(output).RootElement.GetProperty("runs").EnumerateArray()).GetProperty("id").GetString());
    }

    private static void Same(string one, string other) => Assert.Equal(Hashes(one), Hashes(other));

    private static List<(string, string)> Hashes(string answer) =>
        [.. JsonDocument.Parse(answer).RootElement.GetProperty("files").EnumerateArray().Select(f => (f.GetProperty("name").GetString()!, f.GetProperty("sha256").GetString()!))];

    private void Whole()
    {
        string folder = Path.Combine(shop.Folder, "runs", Run);
        using JsonDocument manifest = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "manifest.json")));
        foreach (JsonElement file in manifest.RootElement.GetProperty("files").EnumerateArray())
            Assert.Equal(file.GetProperty("bytes").GetInt64(), new FileInfo(Path.Combine(folder, file.GetProperty("name").GetString()!)).Length);
    }
}
