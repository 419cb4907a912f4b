using System.Text.Json;
using Laydown.Edges.Tests.CommandLines;

namespace Laydown.Edges.Tests.Proof;

/// <summary>Links by the command line.</summary>
public sealed class ProofCommandLawTests
{
    [Fact]
    public async Task A_link_is_made_listed_and_withdrawn()
    {
        using CliShop shop = new();
        string look = Directory.CreateDirectory(Path.Combine(shop.Folder, "looks", ProofSamples.Item, "L-1")).FullName;
        await File.WriteAllBytesAsync(Path.Combine(look, "planes.raw"), [1, 2, 3]);
        (int code, JsonElement made) = await shop.AskAsync("proof", "link", ProofSamples.Item, "L-1", "--days", "5", "--for", "visitor centre", "--address", "http://127.0.0.1:5614/");
        Assert.Equal(0, code);
        Assert.Equal("laydown/proof-link", made.GetProperty("schema").GetString());
        Assert.StartsWith("http://127.0.0.1:5614/proof/", made.GetProperty("url").GetString(), StringComparison.Ordinal);
        string id = made.GetProperty("link").GetProperty("id").GetString()!;

        (_, JsonElement listed) = await shop.AskAsync("proof", "list", ProofSamples.Item);
        Assert.Equal(("open", id), (listed.GetProperty("links")[0].GetProperty("state").GetString(), listed.GetProperty("links")[0].GetProperty("link").GetProperty("id").GetString()));
        Assert.Equal(0, (await shop.AskAsync("proof", "revoke", id)).Code);
        (_, listed) = await shop.AskAsync("proof", "list");
        Assert.Equal("withdrawn", listed.GetProperty("links")[0].GetProperty("state").GetString());
    }

    [Fact]
    public async Task A_link_to_no_look_or_the_withdrawing_of_none_is_refused()
    {
        using CliShop shop = new();
        Assert.Equal(3, (await shop.AskAsync("proof", "link", "TW-1", "L-1")).Code);
        Assert.Equal(3, (await shop.AskAsync("proof", "revoke", "nothing")).Code);
    }
}
