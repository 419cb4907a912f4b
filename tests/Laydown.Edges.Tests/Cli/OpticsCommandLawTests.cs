using System.Text.Json;
using Laydown.Colour.Readings;
using Laydown.Demo.Profiles;
using Laydown.Intake.Colour;
using Xunit;

namespace Laydown.Edges.Tests.CommandLines;

/// <summary>Optics of inks on the command line: told without a shop, kept in one, refused without a trace.</summary>
public sealed class OpticsCommandLawTests : IDisposable
{
    private const string Condition = "long-belt-clear-sheets";
    private readonly CliShop shop = new();

    public void Dispose() => shop.Dispose();

    [Fact]
    public async Task Files_for_each_backing_are_fitted_kept_and_shown()
    {
        ReadingSet all = DemoOptics.Readings(31);
        string File(Behind behind)
        {
            // A file for each backing says nothing itself; what stood behind is said on the command line.
            string path = Path.Combine(shop.Folder, behind + ".txt");
            System.IO.File.WriteAllBytes(path, new ColourFiles().ReadingsText(
                all with { Patches = [.. all.Patches.Where(p => p.Behind == behind).Select(p => p with { Behind = Behind.Unsaid })] }));
            return path;
        }

        (int code, JsonElement before) = await shop.AskAsync("optics", "show", Condition);
        Assert.Equal((0, 7), (code, before.GetProperty("missing").GetArrayLength()));
        (code, JsonElement fit) = await shop.AskAsync(
            "optics", "fit", "--over-black", File(Behind.Black), "--through", File(Behind.Lamp), "--condition", Condition, "--aperture", "8", "--patch", "12");
        Assert.Equal(0, code);
        Assert.Contains(fit.GetProperty("findings").EnumerateArray(), f => f.GetProperty("code").GetString() == "optics-patch-small");
        (code, JsonElement after) = await shop.AskAsync("optics", "show", Condition);
        Assert.Equal((0, 0), (code, after.GetProperty("missing").GetArrayLength()));
        Assert.All(after.GetProperty("inks").EnumerateArray().Where(i => i.GetProperty("role").GetString() != "clear"),
            i => Assert.Equal("overBlackAndThrough", i.GetProperty("absorptionFrom").GetString()));
    }

    [Fact]
    public async Task Readings_over_one_backing_are_refused_and_nothing_is_kept()
    {
        string path = Path.Combine(shop.Folder, "one.txt");
        ReadingSet all = DemoOptics.Readings(31);
        await File.WriteAllBytesAsync(path, new ColourFiles().ReadingsText(all with { Patches = [.. all.Patches.Where(p => p.Behind == Behind.White)] }), TestContext.Current.CancellationToken);
        (int code, JsonElement answer) = await shop.AskAsync("optics", "fit", path, "--condition", Condition);
        Assert.Equal(3, code);
        Assert.Contains(answer.GetProperty("faults").EnumerateArray(), f => f.GetProperty("field").GetString() == "White");
        Assert.False(Directory.Exists(Path.Combine(shop.Folder, "catalogue", "optics")));
    }
}
