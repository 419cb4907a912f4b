using System.Net;
using System.Net.Sockets;
using System.Text.Json;
using Laydown.Cli;
using Laydown.Press.Stacks;

namespace Laydown.Edges.Tests.CommandLines;

public sealed class CommandLineLawTests : IDisposable
{
    private readonly CliShop shop = new();

    public void Dispose() => shop.Dispose();

    [Fact]
    public async Task Every_answer_carries_schema_and_version_from_orders_to_quote()
    {
        shop.Put("TW-1", (CliShop.Board("TW-1-1", "board.pdf"), CliShop.Pdf()));
        Assert.Equal(("laydown/orders", ExitCodes.Done), await SchemaAsync("orders"));
        Assert.Equal(("laydown/plan", ExitCodes.Done), await SchemaAsync("plan"));
        Assert.Equal(("laydown/runs", ExitCodes.Done), await SchemaAsync("runs"));
        Assert.Equal(("laydown/run", ExitCodes.Done), await SchemaAsync("run", "show", "R-20261125-01"));
        Assert.Equal(("laydown/run", ExitCodes.Done), await SchemaAsync("run", "make", "R-20261125-01"));
        Assert.Equal(("laydown/quote", ExitCodes.Done), await SchemaAsync("quote", "TW-1"));
        Assert.Equal(("laydown/day", ExitCodes.Done), await SchemaAsync("day"));
        Assert.Equal("laydown/check", (await SchemaAsync("check", Path.Combine(shop.Folder, "orders", "TW-1", "board.pdf"))).Schema);
    }

    [Theory]
    [InlineData("--thickness", "5,5", "run", "let-go", "R-1", "--thickness", "5.5", "5,5", "5.5", "5.5", "5.5")]
    [InlineData("--edge", "0,5", "run", "let-go", "R-1", "--edge", "0,5")]
    [InlineData("--checked", "NaN", "run", "let-go", "R-1", "--checked", "NaN")]
    [InlineData("--cost", "1,250", "log", "remake", "--cost", "1,250")]
    [InlineData("--room", "1,000", "panel", "solve", "--room", "1,000")]
    public async Task A_number_with_a_comma_is_refused_and_not_read_as_another(string name, string found, params string[] words)
    {
        (int code, JsonElement answer) = await shop.AskAsync(words);
        Assert.Equal(ExitCodes.BadUsage, code);
        Assert.Contains($"{name}: found {found}; wanted a number with a point", answer.GetProperty("message").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_page_at_an_address_that_is_taken_or_not_of_this_machine_is_refused_in_words()
    {
        using TcpListener other = new(IPAddress.Loopback, 0);
        other.Start();
        string taken = FormattableString.Invariant($"http://127.0.0.1:{((IPEndPoint)other.LocalEndpoint).Port}");
        (int code, JsonElement answer) = await shop.AskAsync("serve", "--url", taken);
        Assert.Equal(ExitCodes.Refused, code);
        Assert.Contains($"found {taken} taken", answer.GetProperty("message").GetString(), StringComparison.Ordinal);
        (code, answer) = await shop.AskAsync("serve", "--url", "http://192.0.2.1:5080");
        Assert.Equal(ExitCodes.BadUsage, code);
        Assert.Contains("wanted an http address of this machine", answer.GetProperty("message").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_day_makes_a_whole_run_folder_whose_manifest_holds()
    {
        shop.Put("TW-1", (CliShop.Board("TW-1-1", "board.pdf"), CliShop.Pdf()));
        (int code, JsonElement day) = await shop.AskAsync("day", "--strict");
        Assert.Equal(ExitCodes.Done, code);
        JsonElement run = Assert.Single(day.GetProperty("runs").EnumerateArray());
        string folder = Path.Combine(shop.Folder, "runs", run.GetProperty("folderName").GetString()!);
        List<string> listed = [.. run.GetProperty("files").EnumerateArray().Select(f => f.GetProperty("name").GetString()!)];
        Assert.Contains("set-up.pdf", listed);
        Assert.Equal(listed.Append("manifest.json").Order(StringComparer.Ordinal), Directory.GetFiles(folder).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal));
        foreach (JsonElement file in run.GetProperty("files").EnumerateArray())
        {
            byte[] bytes = await File.ReadAllBytesAsync(Path.Combine(folder, file.GetProperty("name").GetString()!));
            Assert.Equal(file.GetProperty("sha256").GetString(), Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(bytes)));
        }

        Assert.True(new FileInfo(Path.Combine(shop.Folder, "quotes", "TW-1.pdf")).Length > 0);
        Assert.Empty(Directory.EnumerateFiles(Path.Combine(shop.Folder, "scratch"), "*", SearchOption.AllDirectories));
    }

    [Fact]
    public async Task A_stack_is_told_with_reasons_warnings_and_sections()
    {
        Layer[] wrongWayRound =
        [
            new(SheetFace.First, InkGroup.Colour, null, null, 1, 100, 0, false), new(SheetFace.First, InkGroup.White, WhiteSource.Flood, null, 1, 100, 0, false),
        ];
        Laydown.Plan.Orders.Item board = CliShop.Board("TW-1-1", "board.pdf") with { StockId = "acrylic-clear-5" };
        shop.Put(
            "TW-1",
            (board with { Build = board.Build with { Lit = true, White = WhiteSource.Flood, WhitePercent = 100, Back = Laydown.Plan.Orders.BackPicture.Same } }, CliShop.Pdf()),
            (board with { Id = "TW-1-2", Build = board.Build with { Layers = wrongWayRound } }, CliShop.Pdf()));
        await shop.AskAsync("plan");
        (int code, JsonElement derived) = await shop.AskAsync("item", "stack", "TW-1-1");
        Assert.Equal(("laydown/item-stack", ExitCodes.Done), (derived.GetProperty("schema").GetString(), code));
        Assert.Equal(3, derived.GetProperty("stack").GetProperty("layers").GetArrayLength());
        Assert.Empty(derived.GetProperty("findings").EnumerateArray());
        Assert.Contains("lamp on", derived.GetProperty("litSection").GetString(), StringComparison.Ordinal);

        JsonElement written = (await shop.AskAsync("item", "stack", "TW-1-2")).Answer;
        Assert.Equal(
            ["stack-white-nearest", "stack-unseen"], written.GetProperty("findings").EnumerateArray().Select(f => f.GetProperty("code").GetString()));
        Assert.Equal(JsonValueKind.Null, written.GetProperty("litSection").ValueKind);
        Assert.Contains("by day", written.GetProperty("daySection").GetString(), StringComparison.Ordinal);
        Assert.Equal(ExitCodes.Refused, (await shop.AskAsync("item", "stack", "TW-1-9")).Code);
    }

    [Theory]
    [InlineData("no-such-verb")]
    [InlineData("run")]
    [InlineData("check", "x.pdf", "--distance", "far")]
    public async Task What_cannot_be_understood_ends_with_2(params string[] words) =>
        Assert.Equal(("laydown/error", ExitCodes.BadUsage), await SchemaAsync(words));

    [Fact]
    public async Task A_number_out_of_range_ends_with_2_and_is_named()
    {
        shop.Put("TW-1", (CliShop.Board("TW-1-1", "board.pdf"), CliShop.Pdf()));
        (int code, JsonElement answer) = await shop.AskAsync("check", Path.Combine(shop.Folder, "orders", "TW-1", "board.pdf"), "--width", "-600");
        Assert.Equal(ExitCodes.BadUsage, code);
        Assert.Contains("--width: found -600", answer.GetProperty("message").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_does_not_exist_ends_with_3()
    {
        Assert.Equal(("laydown/error", ExitCodes.Refused), await SchemaAsync("run", "show", "R-1"));
        Assert.Equal(("laydown/error", ExitCodes.Refused), await SchemaAsync("run", "make", "R-1"));
        Assert.Equal(("laydown/error", ExitCodes.Refused), await SchemaAsync("quote", "TW-1"));
        Assert.Equal(("laydown/error", ExitCodes.Refused), await SchemaAsync("check", "/nowhere.pdf"));
        File.Delete(Path.Combine(shop.Folder, "catalogue", "shop.json"));
        Assert.Equal(("laydown/error", ExitCodes.Refused), await SchemaAsync("runs"));
    }

    [Fact]
    public async Task A_check_that_finds_a_stop_ends_with_1_and_a_file_that_cannot_be_taken_with_3()
    {
        string file = Path.Combine(shop.Folder, "a.pdf");
        await File.WriteAllBytesAsync(file, CliShop.Pdf());

        // A page of 200 × 100 mm cannot be a piece of 100 × 700 mm.
        (int code, JsonElement answer) = await shop.AskAsync("check", file, "--width", "100", "--height", "700");
        Assert.Equal(ExitCodes.Held, code);
        Assert.Contains(answer.GetProperty("findings").EnumerateArray(), f => f.GetProperty("severity").GetString() == "stop");

        await File.WriteAllBytesAsync(file, CliShop.Pdf()[..200]);
        Assert.Equal(("laydown/error", ExitCodes.Refused), await SchemaAsync("check", file));
    }

    private async Task<(string? Schema, int Code)> SchemaAsync(params string[] words)
    {
        (int code, JsonElement answer) = await shop.AskAsync(words);
        Assert.Equal(["schema", "version"], answer.EnumerateObject().Take(2).Select(p => p.Name));
        Assert.Equal(1, answer.GetProperty("version").GetInt32());
        return (answer.GetProperty("schema").GetString(), code);
    }
}
