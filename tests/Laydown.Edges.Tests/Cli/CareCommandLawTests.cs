using System.Text.Json;
using Laydown.Formats.Json;
using Laydown.Plan.StockRoom;
using Laydown.Plan.Upkeep;
using Laydown.Press.Inks;
using Laydown.Press.Stocks;
using Laydown.Shop.Press;
using Xunit;

namespace Laydown.Edges.Tests.CommandLines;

/// <summary>Upkeep and the stock room on the command line, of a shop and from files alone.</summary>
public sealed class CareCommandLawTests : IDisposable
{
    private readonly CliShop shop = new();

    public void Dispose() => shop.Dispose();

    [Fact]
    public async Task A_run_keeps_back_takes_and_leaves_an_offcut_that_planning_takes_next()
    {
        shop.Put("T-1", (CliShop.Board("T-1-1", "a.pdf"), CliShop.Pdf()));
        await DoneAsync("orders");
        Assert.Equal("L-0001", Lots(await DoneAsync("stock", "receive", "foamed-pvc-3", "3", "--place", "rack 1"))[0].GetProperty("id").GetString());
        await DoneAsync("plan");
        JsonElement run = (await DoneAsync("runs")).GetProperty("runs")[0].GetProperty("run");
        string id = run.GetProperty("id").GetString()!;

        Assert.Equal(1, Lots(await DoneAsync("stock", "reserve", id))[0].GetProperty("reserved")[0].GetProperty("quantity").GetDecimal());
        Assert.Empty(Lots(await DoneAsync("stock", "reserve", id)));

        // What is kept back for the run is there for it; a count that finds less is told with the run at once, and gone again when it is there.
        async Task<bool> LacksAsync() => (await DoneAsync("run", "show", id)).GetProperty("refusals").EnumerateArray().Any(r => r.GetString()!.EndsWith("Order more before release.", StringComparison.Ordinal));
        await DoneAsync("stock", "count", "L-0001", "1");
        Assert.False(await LacksAsync());
        await DoneAsync("stock", "count", "L-0001", "0");
        Assert.True(await LacksAsync());
        await DoneAsync("stock", "count", "L-0001", "3");
        Assert.False(await LacksAsync());
        JsonElement[] after = Lots(await DoneAsync("stock", "take", id, "--place", "rest rack"));
        Assert.Equal(2, after[0].GetProperty("onHand").GetDecimal());
        Assert.All(after.Skip(1), l => Assert.Equal((id, "rest rack"), (l.GetProperty("bornOf").GetString(), l.GetProperty("place").GetString())));
        Assert.NotEmpty(after.Skip(1));

        // It is taken once; then it needs nothing more.
        Assert.Contains("was taken", (await shop.AskAsync("stock", "reserve", id)).Answer.GetProperty("faults")[0].GetProperty("found").GetString(), StringComparison.Ordinal);
        JsonElement needs = (await DoneAsync("stock")).GetProperty("runs")[0];
        Assert.Equal((id, 1m, 1m), (needs.GetProperty("runId").GetString(), needs.GetProperty("needed").GetDecimal(), needs.GetProperty("taken").GetDecimal()));

        // A second order of the same size fits on the rest, which costs less than a board.
        shop.Put("T-2", (CliShop.Board("T-2-1", "a.pdf"), CliShop.Pdf()));
        await DoneAsync("orders");
        await DoneAsync("plan");
        string stock = (await DoneAsync("runs")).GetProperty("runs").EnumerateArray().Select(r => r.GetProperty("run")).Single(r => r.GetProperty("id").GetString() != id).GetProperty("stockId").GetString()!;
        Assert.StartsWith("foamed-pvc-3-", stock, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_a_run_really_used_is_taken_once_when_the_log_ends_it_and_a_log_that_is_corrected_corrects_the_room()
    {
        shop.Put("T-1", (CliShop.Board("T-1-1", "a.pdf"), CliShop.Pdf()));
        await DoneAsync("orders");
        await DoneAsync("stock", "receive", "foamed-pvc-3", "5", "--place", "rack 1");
        await DoneAsync("plan");
        string id = (await DoneAsync("runs")).GetProperty("runs")[0].GetProperty("run").GetProperty("id").GetString()!;
        await DoneAsync("stock", "reserve", id);
        await DoneAsync("log", "start", id, "--at", "2026-11-25T07:00Z");
        JsonElement stop = await DoneAsync("log", "stop", id, "--good", "1", "--spoiled", "2", "--at", "2026-11-25T08:00Z", "--by", "Ada");

        // One board was planned, three are gone; the move says why, by whom and by which entry.
        JsonElement room = await DoneAsync("stock");
        Assert.Equal((2m, 0), (Lots(room)[0].GetProperty("onHand").GetDecimal(), Lots(room)[0].GetProperty("reserved").GetArrayLength()));
        JsonElement move = room.GetProperty("moves").EnumerateArray().Single(m => m.GetProperty("kind").GetString() == "consume");
        Assert.Equal((3m, "Ada", stop.GetProperty("number").GetInt64()), (move.GetProperty("quantity").GetDecimal(), move.GetProperty("by").GetString(), move.GetProperty("logEntry").GetInt64()));
        Assert.Equal(Invariant($"log {stop.GetProperty("number").GetInt64()}: 1 good, 2 spoiled, 1 planned"), move.GetProperty("why").GetString());
        Assert.Equal((1m, 3m, 3m), (room.GetProperty("runs")[0].GetProperty("needed").GetDecimal(), room.GetProperty("runs")[0].GetProperty("used").GetDecimal(), room.GetProperty("runs")[0].GetProperty("taken").GetDecimal()));
        Assert.Equal(0, room.GetProperty("lines").EnumerateArray().Single(l => l.GetProperty("stockId").GetString() == "foamed-pvc-3").GetProperty("wanted").GetDecimal());
        Assert.Contains(Lots(room), l => l.TryGetProperty("bornOf", out JsonElement of) && of.GetString() == id);
        Assert.Equal(3, (await shop.AskAsync("stock", "take", id)).Code);

        // The end was wrong: all of it comes back, rests go out; told again, what was used is taken anew.
        await DoneAsync("log", "strike", Invariant($"{stop.GetProperty("number").GetInt64()}"), "--note", "counted wrong");
        Assert.Equal(5, Assert.Single(Lots(await DoneAsync("stock"))).GetProperty("onHand").GetDecimal());
        await DoneAsync("log", "stop", id, "--good", "1", "--at", "2026-11-25T08:00Z");
        Assert.Equal(4, Lots(await DoneAsync("stock"))[0].GetProperty("onHand").GetDecimal());
    }

    [Fact]
    public async Task A_point_of_ordering_is_set_in_the_shop_stands_in_place_of_the_file_and_is_taken_back()
    {
        await DoneAsync("stock", "receive", "foamed-pvc-3", "5", "--place", "rack 1");
        async Task<JsonElement> LineAsync() => (await DoneAsync("stock")).GetProperty("lines").EnumerateArray().Single(l => l.GetProperty("stockId").GetString() == "foamed-pvc-3");
        await DoneAsync("stock", "reorder", "foamed-pvc-3", "--at", "4", "--to", "12", "--by", "Ann");
        JsonElement line = await LineAsync();
        Assert.Equal((4, 12, "Ann", false, 0m), (line.GetProperty("reorderAt").GetInt32(), line.GetProperty("orderTo").GetInt32(), line.GetProperty("setBy").GetString(), line.GetProperty("isLow").GetBoolean(), line.GetProperty("toOrder").GetDecimal()));
        await DoneAsync("stock", "use", "L-0001", "1");
        line = await LineAsync();
        Assert.Equal((true, 8m), (line.GetProperty("isLow").GetBoolean(), line.GetProperty("toOrder").GetDecimal()));

        // Refused by field, and what was set stays.
        foreach ((string[] words, string field) in new[] { (new[] { "foamed-pvc-3", "--at", "-1" }, "at"), (["foamed-pvc-3", "--at", "5", "--to", "5"], "to"), (["foamed-pvc-3", "--to", "5"], "to"), (["gold", "--at", "5"], "stockId"), (["foamed-pvc-3", "--at", "5", "--by", " "], "by") })
        {
            (int code, JsonElement answer) = await shop.AskAsync(["stock", "reorder", .. words]);
            Assert.Equal((3, field), (code, answer.GetProperty("faults")[0].GetProperty("field").GetString()));
        }

        Assert.Equal(4, (await LineAsync()).GetProperty("reorderAt").GetInt32());
        await DoneAsync("stock", "reorder", "foamed-pvc-3");
        line = await LineAsync();
        Assert.False(line.TryGetProperty("reorderAt", out JsonElement at) && at.ValueKind == JsonValueKind.Number);
        Assert.Equal((false, 0m), (line.GetProperty("isLow").GetBoolean(), line.GetProperty("toOrder").GetDecimal()));
    }

    [Fact]
    public async Task What_cannot_be_done_in_the_room_is_refused_and_nothing_changes()
    {
        await DoneAsync("stock", "receive", "foamed-pvc-3", "3", "--place", "rack 1");
        foreach (string[] words in (string[][])[["use", "L-0001", "4"], ["count", "L-0001", "-1"], ["use", "L-0009", "1"], ["reserve", "R-9"], ["receive", "gold", "1", "--place", "x"], ["add", "L-0001", "0.5"]])
        {
            (int code, JsonElement answer) = await shop.AskAsync(["stock", .. words]);
            Assert.Equal(3, code);
            Assert.NotEqual("", answer.GetProperty("faults")[0].GetProperty("wanted").GetString());
        }

        JsonElement room = await DoneAsync("stock");
        Assert.Equal(3, Lots(room)[0].GetProperty("onHand").GetDecimal());
        Assert.Equal(1, room.GetProperty("moves").GetArrayLength());
    }

    [Fact]
    public async Task Readings_at_the_press_change_the_plan_and_a_reading_over_the_capacity_is_refused()
    {
        JsonElement Cyan(JsonElement plan) => plan.GetProperty("tanks").EnumerateArray().Single(t => t.GetProperty("tankId").GetString() == "C");
        Assert.Equal(1710, Cyan(await DoneAsync("upkeep")).GetProperty("levels")[0].GetProperty("levelMl").GetDouble());
        await DoneAsync("upkeep", "read", "long-belt", "C=1200", "--print-hours", "3");
        Assert.Equal(1200, Cyan(await DoneAsync("upkeep")).GetProperty("levels")[0].GetProperty("levelMl").GetDouble());
        foreach (string[] words in (string[][])[["read", "long-belt", "C=2401"], ["read", "long-belt", "C=-1"], ["read", "long-belt", "X=1"], ["read", "no-press", "C=1"], ["done", "long-belt", "dance"], ["shelf", "long-belt", "cyan:A:-5"]])
            Assert.Equal(3, (await shop.AskAsync(["upkeep", .. words])).Code);
        Assert.Equal(1200, Cyan(await DoneAsync("upkeep")).GetProperty("levels")[0].GetProperty("levelMl").GetDouble());
        Assert.Equal(3, (await shop.AskAsync("upkeep", "--days", "0")).Code);
        await DoneAsync("upkeep", "done", "long-belt", "lamps");
        await DoneAsync("upkeep", "shelf", "long-belt", "light-cyan:A-7:2000:2027-03-31");
        Assert.Equal(2000, (await DoneAsync("upkeep")).GetProperty("inks").EnumerateArray().Single(i => i.GetProperty("role").GetString() == "lightCyan").GetProperty("onShelfMl").GetDouble());
    }

    [Fact]
    public async Task A_shop_without_a_calendar_says_that_it_needs_one()
    {
        File.Delete(Path.Combine(shop.Folder, "catalogue", "calendar.json"));
        (int code, JsonElement answer) = await shop.AskAsync("upkeep");
        Assert.Equal((3, "calendar.json"), (code, answer.GetProperty("faults")[0].GetProperty("file").GetString()));
    }

    [Fact]
    public async Task Upkeep_and_room_are_planned_from_files_alone()
    {
        DateTimeOffset friday = new(2026, 12, 4, 9, 0, 0, TimeSpan.Zero);
        Laydown.Shop.Orders.Catalogue catalogue = new Laydown.Intake.Orders.CatalogueReader().Read(Path.Combine(shop.Folder, "catalogue")).Value;
        UpkeepRequest request = new(
            catalogue.Presses[0], catalogue.InkSets[0], catalogue.Rates, catalogue.Calendar!, new("long-belt", friday, [], []), [new("A", InkRole.Cyan, 1000)],
            [new("R-1", "a", friday, friday.AddHours(8), [new("C", 4, 1900)]), new("R-2", "b", friday.AddDays(3), friday.AddDays(3).AddHours(1), [])], friday, friday.AddDays(4));
        string file = Path.Combine(shop.Folder, "upkeep.json");
        File.WriteAllBytes(file, LaydownJson.ToBytes(request));
        JsonElement plan = await DoneAsync("upkeep", "--file", file);

        // Friday 17:00 to Monday 9:00 are 64 h: more than 60.
        Assert.Equal(64, plan.GetProperty("longStops")[0].GetProperty("hours").GetDouble());
        Assert.True(plan.GetProperty("longStops")[0].GetProperty("options").GetArrayLength() >= 2);
        Assert.Equal("A", plan.GetProperty("tanks")[0].GetProperty("topUps")[0].GetProperty("lots")[0].GetProperty("lot").GetString());

        File.WriteAllBytes(file, LaydownJson.ToBytes(request with { State = request.State with { Tanks = [new("C", 2400.5)] } }));
        (int code, JsonElement answer) = await shop.AskAsync("upkeep", "--file", file);
        Assert.Equal((3, "/state/tanks/0/levelMl", "upkeep.json"), (code, answer.GetProperty("faults")[0].GetProperty("field").GetString(), answer.GetProperty("faults")[0].GetProperty("file").GetString()));

        StockLot lot = new("L-1", "foamed-pvc-3", StockKind.Board, 1220, 2440, "rack", 4, [], new(2026, 11, 1));
        StockRoomFile room = new([catalogue.Stocks.First(s => s.Id == "foamed-pvc-3")], [lot], [new(StockMoveKind.Consume, "L-1", 3, friday, "Ann")]);
        string stock = Path.Combine(shop.Folder, "room.json");
        File.WriteAllBytes(stock, LaydownJson.ToBytes(room));
        Assert.Equal(1, Lots(await DoneAsync("stock", "--file", stock))[0].GetProperty("onHand").GetDecimal());
        File.WriteAllBytes(stock, LaydownJson.ToBytes(room with { Moves = [.. room.Moves, .. room.Moves] }));
        Assert.Equal("/moves/1/quantity", (await shop.AskAsync("stock", "--file", stock)).Answer.GetProperty("faults")[0].GetProperty("field").GetString());
    }

    private static JsonElement[] Lots(JsonElement answer) => [.. answer.GetProperty("lots").EnumerateArray()];

    private async Task<JsonElement> DoneAsync(params string[] words)
    {
        (int code, JsonElement answer) = await shop.AskAsync(words);
        Assert.True(code == 0, answer.ToString());
        return answer;
    }
}
