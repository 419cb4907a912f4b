using System.Diagnostics;
using System.Text.Json;
using Laydown.Cli;
using Laydown.Edges.Tests.CommandLines;
using Xunit;

namespace Laydown.Edges.Tests.Looks;

/// <summary>Looks and panels on the command line.</summary>
public sealed class PanelCommandLawTests : IDisposable
{
    private readonly CliShop shop = new();
    private readonly PairDesk pictures = new();

    public void Dispose()
    {
        shop.Dispose();
        pictures.Dispose();
    }

    [Fact]
    public async Task A_panel_of_two_files_is_solved_into_a_folder_and_told_as_json()
    {
        (int code, JsonElement answer) = await shop.AskAsync(Solve("out", "--weight", "0.5", "--white", "stepped", "--strengths", "0.6,1", "--note", "for the wall"));
        Assert.Equal((ExitCodes.Done, "laydown/panel-look"), (code, answer.GetProperty("schema").GetString()));
        JsonElement look = answer.GetProperty("look");
        Assert.Equal("for the wall", look.GetProperty("note").GetString());
        Assert.Equal([0.6, 1], look.GetProperty("wish").GetProperty("whiteStrengths").EnumerateArray().Select(v => v.GetDouble()));
        Assert.True(look.GetProperty("report").GetProperty("day").GetProperty("mean").GetDouble() >= 0);
        Assert.True(File.Exists(Path.Combine(answer.GetProperty("folder").GetString()!, "planes.raw")));
    }

    [Theory]
    [InlineData("--weight", "0")]
    [InlineData("--ppi", "5")]
    [InlineData("--strengths", "2")]
    [InlineData("--point", "1,2,3")]
    [InlineData("--point", "10,10=10,10%")]
    [InlineData("--room-light", "candle")]
    public async Task What_cannot_be_understood_is_bad_usage(string option, string value)
    {
        (int code, JsonElement answer) = await shop.AskAsync(Solve("out", option, value));
        Assert.Equal((ExitCodes.BadUsage, "laydown/error"), (code, answer.GetProperty("schema").GetString()));
        Assert.Contains(option, answer.GetProperty("message").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_picture_that_is_refused_is_told_with_file_and_field()
    {
        string[] words = Solve("out");
        words[Array.IndexOf(words, "--night") + 1] = pictures.Write("words.png", "no picture"u8.ToArray());
        (int code, JsonElement answer) = await shop.AskAsync(words);
        Assert.Equal((ExitCodes.Refused, "words.png"), (code, answer.GetProperty("faults")[0].GetProperty("file").GetString()));
        Assert.False(Directory.Exists(Path.Combine(shop.Folder, "out")));
    }

    [Fact]
    public async Task What_is_seen_of_mixtures_is_told_as_json_and_csv()
    {
        string spots = pictures.Write("spots.csv", "id,1 C,1 M,1 Y,1 K,2 White,3 C,3 M,3 Y,3 K\nbare,0,0,0,0,100,0,0,0,0\ndark,0,0,0,95,100,0,0,0,95\n"u8.ToArray());
        string[] words = ["look", spots, "--stock", "acrylic-clear-5", "--ink-set", "eight-inks", "--layers", "second:CMYK,second:white,second:CMYK"];
        (int code, JsonElement answer) = await shop.AskAsync(words);
        Assert.Equal((ExitCodes.Done, "laydown/look"), (code, answer.GetProperty("schema").GetString()));
        JsonElement[] all = [.. answer.GetProperty("spots").EnumerateArray()];
        Assert.Equal(36, all[0].GetProperty("reflectance").GetArrayLength());
        Assert.True(all[0].GetProperty("nightCdPerM2").GetProperty("y").GetDouble() > 50 * all[1].GetProperty("nightCdPerM2").GetProperty("y").GetDouble());

        string csv = Path.Combine(shop.Folder, "seen.csv");
        Assert.Equal(ExitCodes.Done, (await shop.AskAsync([.. words, "--out", csv])).Code);
        string[] lines = await File.ReadAllLinesAsync(csv, TestContext.Current.CancellationToken);
        Assert.Equal(3, lines.Length);
        Assert.All(lines, l => Assert.Equal(lines[0].Split(',').Length, l.Split(',').Length));
        Assert.StartsWith("id,1 Cyan,1 Magenta", lines[0], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Looks_of_an_item_that_does_not_exist_are_refused()
    {
        foreach (string[] words in (string[][])[["panel", "list", "X-9"], ["panel", "show", "X-9", "L-1"], ["panel", "choose", "X-9", "L-1"], ["panel", "solve", "X-9"], ["panel", "separate", "X-9"]])
            Assert.Equal(ExitCodes.Refused, (await shop.AskAsync(words)).Code);
    }

    [Fact]
    public async Task A_killed_solve_leaves_no_look_and_the_next_sweeps_its_remains()
    {
        string place = Path.Combine(shop.Folder, "killed");
        using (Process child = shop.Start("", null, Solve("killed/panel", "--ppi", "300")))
        {
            // Killed as soon as the folder in the making is there.
            while (!child.HasExited && (!Directory.Exists(place) || Directory.GetDirectories(place, ".*.part").Length == 0))
                await Task.Delay(5, TestContext.Current.CancellationToken);
            Assert.False(child.HasExited, "It ended before it could be killed.");
            child.Kill();
            await child.WaitForExitAsync(TestContext.Current.CancellationToken);
        }

        Assert.False(Directory.Exists(Path.Combine(place, "panel")));
        (int code, _) = await shop.AskAsync(Solve("killed/panel"));
        Assert.Equal(ExitCodes.Done, code);
        Assert.Equal(["panel"], Directory.GetFileSystemEntries(place).Select(Path.GetFileName));
    }

    private string[] Solve(string folder, params string[] more)
    {
        string day = pictures.Saved("day.png", 60, 40, (x, y) => ((byte)(100 + (2 * x)), (byte)(240 - y), 200), (image, path) => image.Pngsave(path, profile: "srgb"));
        string night = pictures.Saved("night.png", 60, 40, (x, y) => ((byte)(3 * x), (byte)(4 * y), 60), (image, path) => image.Pngsave(path, profile: "srgb"));
        return
        [
            "panel", "solve", "--day", day, "--night", night, "--stock", "acrylic-clear-5", "--condition", "long-belt-clear-sheets",
            "--width", "60", "--height", "40", "--out", Path.Combine(shop.Folder, folder), .. more.Contains("--ppi") ? more : [.. more, "--ppi", "25"],
        ];
    }
}
