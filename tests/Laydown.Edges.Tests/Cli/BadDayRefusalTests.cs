using System.Diagnostics;
using System.Text.Json;
using Laydown.Cli;
using Laydown.Plan.Orders;
using NetVips;

namespace Laydown.Edges.Tests.CommandLines;

/// <summary>Days on which something goes wrong, with the built program as a child: a clear message, the rest done, nothing half-written.</summary>
public sealed class BadDayRefusalTests : IDisposable
{
    private readonly CliShop shop = new();

    public void Dispose() => shop.Dispose();

    [Fact]
    public async Task Bad_orders_and_bad_artwork_hold_up_nothing_else()
    {
        Item good = CliShop.Board("TW-1-1", "board.pdf");
        shop.Put("TW-1", (good, CliShop.Pdf()), (CliShop.Board("TW-1-2", "cut-short.pdf"), CliShop.Pdf()[..300]), (CliShop.Board("TW-1-3", "empty.tif"), []));
        shop.Put("TW-2", (CliShop.Board("TW-2-1", "board.pdf") with { StockId = "unobtainium" }, CliShop.Pdf()));
        shop.Put("TW-3", (CliShop.Board("TW-3-1", "board.pdf") with { WidthMm = 9000, HeightMm = 4500 }, CliShop.Pdf()));
        shop.Put("TW-4", (CliShop.Board("TW-4-1", "board.pdf"), CliShop.Pdf()));
        await SpoilAsync("TW-4", json => json[..(json.Length / 2)]);
        shop.Put("TW-5", (CliShop.Board("TW-5-1", "board.pdf"), CliShop.Pdf()));
        await SpoilAsync("TW-5", json => json.Replace("\"widthMm\": 200", "\"widthMm\": -200", StringComparison.Ordinal));
        shop.Put("TW-6", (CliShop.Board("TW-6-1", "board.pdf"), CliShop.Pdf()));
        await SpoilAsync("TW-6", json => json.Replace("\"due\": \"2026-12-04\"", "\"due\": \"2026-11-24\"", StringComparison.Ordinal)
            .Replace("\"received\": \"2026-11-25\"", "\"received\": \"2026-11-20\"", StringComparison.Ordinal));

        (int code, string output, _) = await shop.RunAsync("", null, "day", "--json");
        JsonElement day = JsonDocument.Parse(output).RootElement;
        Assert.Equal(ExitCodes.Done, code);
        Assert.Equal(["TW-4/order.json", "TW-5/order.json"], day.GetProperty("refused").EnumerateArray().Select(r => r.GetProperty("fileName").GetString()));
        Assert.Equal(
            ["TW-1-2", "TW-1-3", "TW-2-1", "TW-3-1", "TW-6-1"],
            day.GetProperty("held").EnumerateArray().Select(h => h.GetProperty("id").GetString()));
        Assert.All(day.GetProperty("held").EnumerateArray(), h => Assert.Contains("wanted", h.GetProperty("why").GetString(), StringComparison.Ordinal));
        Assert.Single(day.GetProperty("runs").EnumerateArray());
        Assert.Equal(["TW-1", "TW-2", "TW-3", "TW-6"], day.GetProperty("quotes").EnumerateArray().Select(q => q.GetString()));
        NothingHalfWritten();

        (int strict, _, _) = await shop.RunAsync("", null, "day", "--strict");
        Assert.Equal(ExitCodes.Held, strict);
    }

    [Fact]
    public async Task Without_Ghostscript_all_that_does_not_need_it_is_done_and_the_program_ends_with_4()
    {
        shop.Put("TW-1", (CliShop.Board("TW-1-1", "board.pdf"), CliShop.Pdf()));
        shop.Put("TW-2", (CliShop.Board("TW-2-1", "board.png"), Png()));
        string bare = Directory.CreateDirectory(Path.Combine(shop.Folder, "no-programs")).FullName;
        (int code, string output, string error) = await shop.RunAsync("", bare, "day");
        Assert.Equal(ExitCodes.Missing, code);
        Assert.Contains("Ghostscript is missing", error, StringComparison.Ordinal);
        Assert.Contains("TW-1-1 is held back", output, StringComparison.Ordinal);
        Assert.Single(Directory.GetDirectories(Path.Combine(shop.Folder, "runs")));
        NothingHalfWritten();

        // Once it is there, the next day makes up for it.
        (code, output, _) = await shop.RunAsync("", null, "day", "--json");
        Assert.Equal(ExitCodes.Done, code);
        Assert.Empty(JsonDocument.Parse(output).RootElement.GetProperty("held").EnumerateArray());
        Assert.Equal(2, Directory.GetDirectories(Path.Combine(shop.Folder, "runs")).Length);
    }

    [Fact]
    public async Task A_disk_without_room_for_press_files_leaves_no_run_folder_and_the_quotes_are_written()
    {
        shop.Put("TW-1", (CliShop.Board("TW-1-1", "board.pdf") with { WidthMm = 1000, HeightMm = 500 }, CliShop.Pdf(1000, 500)));

        // No file may grow over 9 MiB: store, papers and the measuring of ink stay under it, the planes of press files do not.
        // The runtime keeps its own code in one large file in memory unless it is told not to.
        (int code, string output, _) = await shop.RunAsync("trap '' XFSZ; ulimit -f 9216; export DOTNET_EnableWriteXorExecute=0;", null, "day", "--json");
        JsonElement day = JsonDocument.Parse(output).RootElement;
        Assert.Equal(ExitCodes.Done, code);
        Assert.Equal("R-20261125-01", Assert.Single(day.GetProperty("aborted").EnumerateArray()).GetString());
        Assert.NotEmpty(day.GetProperty("faults").EnumerateArray());
        Assert.Single(day.GetProperty("quotes").EnumerateArray());
        Assert.False(Directory.Exists(Path.Combine(shop.Folder, "runs", "R-20261125-01")));
        NothingHalfWritten();

        (code, _, _) = await shop.RunAsync("", null, "day", "--strict");
        Assert.Equal(ExitCodes.Done, code);
        Assert.True(File.Exists(Path.Combine(shop.Folder, "runs", "R-20261125-01", "manifest.json")));
    }

    [Fact]
    public async Task Ctrl_C_ends_with_130_and_leaves_nothing_half_written()
    {
        shop.Put("TW-1", (CliShop.Board("TW-1-1", "board.pdf") with { WidthMm = 1000, HeightMm = 2000, Quantity = 3 }, CliShop.Pdf(1000, 2000)));
        Assert.Equal(ExitCodes.Done, (await shop.RunAsync("", null, "plan", "--strict")).Code);

        using Process making = shop.Start("", null, "run", "make", "R-20261125-01");
        Task<string> output = making.StandardOutput.ReadToEndAsync();
        string? begun = await making.StandardError.ReadLineAsync();
        Assert.StartsWith("R-20261125-01", begun, StringComparison.Ordinal);
        using (Process kill = Process.Start("/bin/kill", ["-INT", Invariant($"{making.Id}")]))
            await kill.WaitForExitAsync();
        Task<string> error = making.StandardError.ReadToEndAsync();
        await making.WaitForExitAsync();
        Assert.Equal((ExitCodes.Cancelled, ""), (making.ExitCode, await output));
        Assert.Contains("Cancelled", await error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(shop.Folder, "runs", "R-20261125-01")));
        NothingHalfWritten();
        (_, JsonElement run) = await shop.AskAsync("run", "show", "R-20261125-01");
        Assert.True(run.GetProperty("run").GetProperty("state").GetString() == "aborted", await error);
    }

    private async Task SpoilAsync(string order, Func<string, string> spoil)
    {
        string file = Path.Combine(shop.Folder, "orders", order, "order.json");
        string json = await File.ReadAllTextAsync(file);
        string spoilt = spoil(json);
        Assert.NotEqual(json, spoilt);
        await File.WriteAllTextAsync(file, spoilt);
    }

    /// <summary>Every run folder has its manifest, and nothing lies in scratch or under a name of something unfinished.</summary>
    private void NothingHalfWritten()
    {
        string runs = Path.Combine(shop.Folder, "runs");
        if (Directory.Exists(runs))
            Assert.All(Directory.GetDirectories(runs), run => Assert.True(File.Exists(Path.Combine(run, "manifest.json")), run));
        List<string> left = [.. Directory.EnumerateFiles(shop.Folder, "*", SearchOption.AllDirectories).Where(f =>
            f.Contains("/scratch/", StringComparison.Ordinal) || Path.GetFileName(f).StartsWith('.') || f.EndsWith(".part", StringComparison.Ordinal))];
        Assert.Empty(left);
    }

    private static byte[] Png()
    {
        using Image grey = Image.Black(400, 200).NewFromImage(90.0, 120.0, 160.0);
        using Image picture = grey.Cast(Enums.BandFormat.Uchar).Copy(interpretation: Enums.Interpretation.Srgb);
        return picture.WriteToBuffer(".png");
    }
}
