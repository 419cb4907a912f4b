using System.Text.Json;
using NetVips;
using Xunit;

namespace Laydown.Edges.Tests.CommandLines;

/// <summary>A run made, made into dots, looked into and compared with itself on the command line.</summary>
public sealed class RunLookCommandLawTests : IDisposable
{
    private readonly CliShop shop = new();

    public void Dispose() => shop.Dispose();

    [Fact]
    public async Task Dots_are_looked_into_at_their_own_size_and_two_makes_are_compared()
    {
        shop.Put("T-1", (CliShop.Board("T-1-1", "a.pdf"), CliShop.Pdf()));
        foreach (string step in new[] { "orders", "plan" })
            Assert.Equal(0, (await shop.AskAsync(step)).Code);
        string id = (await shop.AskAsync("runs")).Answer.GetProperty("runs").EnumerateArray().Single().GetProperty("run").GetProperty("id").GetString()!;
        Assert.Equal(3, (await shop.AskAsync("run", "look", id)).Code);
        Assert.Equal(0, (await shop.AskAsync("run", "dots", id, "--bits", "1", "--compression", "deflate", "--screen", "diffusion")).Code);

        // Everywhere on the board together: a tint of cyan and one of black lie there, as wide as they were drawn.
        string png = Path.Combine(shop.Folder, "crop.png");
        (int code, JsonElement answer) = await shop.AskAsync("run", "look", id, "--at", "0,0", "--size", "60,40", "--mm", "--ink", "Cyan", "--png", png);
        Assert.Equal(0, code);
        JsonElement crop = answer.GetProperty("crop"), ink = crop.GetProperty("inks")[0];
        Assert.True(crop.GetProperty("isDots").GetBoolean());
        using (Image picture = Image.NewFromFile(png))
            Assert.Equal((crop.GetProperty("columns").GetInt32(), crop.GetProperty("rows").GetInt32()), (picture.Width, picture.Height));
        Assert.Equal((long)crop.GetProperty("columns").GetInt32() * crop.GetProperty("rows").GetInt32(), ink.GetProperty("values").EnumerateArray().Sum(v => v.GetProperty("count").GetInt64()));
        Assert.Equal(0, (await shop.AskAsync("run", "look", id, "--mm")).Code);
        Assert.Equal(3, (await shop.AskAsync("run", "look", id, "--layer", "9")).Code);
        Assert.Equal(3, (await shop.AskAsync("run", "look", id, "--sheet", "0")).Code);
        Assert.Equal(3, (await shop.AskAsync("run", "look", "R-none")).Code);
        Assert.Equal(3, (await shop.AskAsync("run", "look", id, "--png", Path.Combine(shop.Folder, "no-such-folder", "a.png"))).Code);
        Assert.Equal(3, (await shop.AskAsync("run", "look", id, "--ink", "Ochre")).Code);
        Assert.Equal(3, (await shop.AskAsync("run", "look", id, "--at", "-5,0")).Code);
        Assert.Equal(2, (await shop.AskAsync("run", "look", id, "--at", "here")).Code);

        string made = Path.Combine(shop.Folder, "runs", id), copy = Path.Combine(shop.Folder, "copy");
        Directory.CreateDirectory(copy);
        foreach (string file in Directory.GetFiles(made))
            File.Copy(file, Path.Combine(copy, Path.GetFileName(file)));
        (int same, JsonElement said) = await shop.AskAsync("run", "compare", made, copy);
        Assert.Equal((0, true), (same, said.GetProperty("same").GetBoolean()));

        // Another screen puts as much ink elsewhere.
        Assert.Equal(0, (await shop.AskAsync("run", "dots", id, "--bits", "1", "--compression", "deflate")).Code);
        (int other, said) = await shop.AskAsync("run", "compare", made, copy);
        Assert.Equal((1, false), (other, said.GetProperty("same").GetBoolean()));
        JsonElement moved = said.GetProperty("files").EnumerateArray().First(f => f.GetProperty("pixels").ValueKind == JsonValueKind.Object);
        JsonElement means = moved.GetProperty("pixels").GetProperty("inks")[0];
        Assert.InRange(means.GetProperty("firstMean").GetDouble() / means.GetProperty("secondMean").GetDouble(), 0.99, 1.01);
        Assert.Equal(3, (await shop.AskAsync("run", "compare", made, shop.Folder)).Code);
    }
}
