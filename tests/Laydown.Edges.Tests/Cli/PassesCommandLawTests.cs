using System.Text.Json;
using Xunit;

namespace Laydown.Edges.Tests.CommandLines;

/// <summary>Passes and bands on the command line: of a run before and after its files are made, of a mode alone, refused with what is wanted.</summary>
public sealed class PassesCommandLawTests : IDisposable
{
    private readonly CliShop shop = new();

    public void Dispose() => shop.Dispose();

    [Fact]
    public async Task A_run_shows_its_passes_and_is_forecast_on_its_own_ink_once_its_files_are_made()
    {
        shop.Put("T-1", (CliShop.Board("T-1-1", "a.pdf"), CliShop.Pdf()));
        foreach (string step in new[] { "orders", "plan" })
            Assert.Equal(0, (await shop.AskAsync(step)).Code);
        JsonElement run = (await shop.AskAsync("runs")).Answer.GetProperty("runs").EnumerateArray().Single().GetProperty("run");
        string id = run.GetProperty("id").GetString()!;
        Assert.Contains(run.GetProperty("mode").GetProperty("reasons").EnumerateArray(), r => r.GetString()!.StartsWith("Bands: at most", StringComparison.Ordinal));

        JsonElement planned = (await shop.AskAsync("passes", id)).Answer.GetProperty("view");
        Assert.False(planned.GetProperty("fromPicture").GetBoolean());
        Assert.Equal(0, (await shop.AskAsync("run", "make", id)).Code);
        JsonElement made = (await shop.AskAsync("passes", id)).Answer.GetProperty("view");
        Assert.True(made.GetProperty("fromPicture").GetBoolean());

        // Two tints of cyan and black are less than every tone of every ink.
        Assert.InRange(Seen(made), 0.0001, Seen(planned));
        Assert.False(made.GetProperty("mended").GetBoolean());
        Assert.Equal(made.GetProperty("modeId").GetString(), made.GetProperty("bands")[0].GetProperty("modeId").GetString());

        // A dot file that is none, and a path in place of a name, are refused.
        string one = Path.Combine(shop.Folder, "0.png");
        Assert.Equal(3, (await shop.AskAsync("passes", id, "--pass", "0", "--dots", "none.tif", "--out", one)).Code);
        Assert.Equal(3, (await shop.AskAsync("passes", id, "--pass", "0", "--dots", "../store/shop.db", "--out", one)).Code);
    }

    [Fact]
    public async Task A_mode_shows_every_scan_and_writes_pictures_of_a_pass_and_of_its_bands()
    {
        string pass = Path.Combine(shop.Folder, "pass.png"), bands = Path.Combine(shop.Folder, "bands.png");
        (int code, JsonElement answer) = await shop.AskAsync(
            "passes", "--mode", "fine", "--length", "200", "--scans", "--pass", "1", "--out", pass, "--preview", bands, "--times", "5");
        Assert.Equal(0, code);
        JsonElement face = answer.GetProperty("view").GetProperty("faces")[0];
        JsonElement[] scans = [.. answer.GetProperty("scans")[0].EnumerateArray()];
        Assert.Equal(face.GetProperty("scans").GetInt32(), scans.Length);
        Assert.Equal([true, false], scans.Take(2).Select(s => s.GetProperty("forth").GetBoolean()));
        Assert.True(face.GetProperty("firesInTime").GetBoolean());
        Assert.All(new[] { pass, bands }, p => Assert.Equal<byte>([0x89, 0x50, 0x4E, 0x47], File.ReadAllBytes(p).Take(4)));
    }

    [Fact]
    public async Task The_farther_the_viewer_the_less_is_seen()
    {
        double[] seen = [Seen((await Mode("0.5")).GetProperty("view")), Seen((await Mode("2")).GetProperty("view")), Seen((await Mode("8")).GetProperty("view"))];
        Assert.Equal(seen.OrderDescending(), seen);
    }

    [Fact]
    public async Task A_run_a_mode_a_pass_and_a_dot_file_that_are_none_are_refused()
    {
        Assert.Equal(3, (await shop.AskAsync("passes", "R-1")).Code);
        Assert.Equal(2, (await shop.AskAsync("passes")).Code);
        Assert.Equal(2, (await shop.AskAsync("passes", "--mode", "fine", "--times", "-1")).Code);
        (int code, JsonElement answer) = await shop.AskAsync("passes", "--mode", "none");
        Assert.Equal(3, code);
        Assert.Contains("long-belt fine", answer.GetProperty("faults")[0].GetProperty("wanted").GetString(), StringComparison.Ordinal);
        Assert.Equal(3, (await shop.AskAsync("passes", "--mode", "fine", "--pass", "2", "--out", Path.Combine(shop.Folder, "x.png"))).Code);
    }

    private async Task<JsonElement> Mode(string distance) => (await shop.AskAsync("passes", "--mode", "everyday", "--length", "300", "--distance", distance)).Answer;

    private static double Seen(JsonElement view) => view.GetProperty("bands")[0].GetProperty("forecast").GetProperty("visibleDeltaL").GetDouble();
}
