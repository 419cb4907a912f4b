using System.Security.Cryptography;
using System.Text.Json;
using Laydown.Plan.Upkeep;

namespace Laydown.Shop.Press;

/// <summary>A short mark of the ink on a shelf, so that nobody writes over what another wrote meanwhile.</summary>
public static class ShelfMark
{
    private const int Letters = 12;

    /// <summary>The mark: equal for equal shelves.</summary>
    /// <param name="packs">The shelf.</param>
    public static string Of(IReadOnlyList<InkPack> packs) =>
        Convert.ToHexStringLower(SHA256.HashData(JsonSerializer.SerializeToUtf8Bytes(packs, ShopJson.Compact)))[..Letters];
}
