using System.Text.Json;
using Laydown.Shop;
using Laydown.Shop.Layers;
using Laydown.Shop.Proof;

namespace Laydown.Web.Layers;

/// <summary>One look as it lies on the light table.</summary>
/// <param name="Name">Its name beside the picture.</param>
/// <param name="Base">Address below which its tiles and pictures lie.</param>
/// <param name="Point">Address that tells what is at a place; null where that is not told.</param>
/// <param name="Table">What the script must know.</param>
public sealed record StageLook(string Name, string Base, string? Point, LightTable Table)
{
    /// <summary>The table as JSON for the script.</summary>
    public string TableJson => JsonSerializer.Serialize(Table, ShopJson.Compact);

    /// <summary>A look on the shop's own pages.</summary>
    public static StageLook Of(LookRecord record, LightTable table)
    {
        string path = Invariant($"/looks/{Uri.EscapeDataString(record.ItemId)}/{Uri.EscapeDataString(record.LookId)}");
        return new(record.LookId, path, "/api" + path + "/point", table);
    }
}
