using System.Security.Cryptography;
using System.Text.Json;
using System.Text.Json.Nodes;
using Laydown.Press.Inks;
using Laydown.Press.Machines;
using Laydown.Press.Stocks;

namespace Laydown.Shop.Run;

/// <summary>What a run is printed from beside itself, as JSON: press, inks, stocks, condition, profile, lines, artwork and looks.</summary>
/// <remarks>
/// What changes nothing that is printed stays out: how much of a stock is in the room, when and how much of it is ordered, how full tanks are, what stock, ink
/// and press cost, and how the press is kept fit. The price of the run itself is the run's.
/// </remarks>
public static class RunInputs
{
    // Differences that are told one by one; more than these say no more to a reader.
    private const int MostTold = 3;

    /// <summary>The inputs of a run.</summary>
    /// <param name="context">The run with all it refers to.</param>
    /// <param name="cancellation">Stops reading the profile.</param>
    internal static async Task<JsonObject> OfAsync(RunContext context, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(context);
        string profile = File.Exists(context.ProfilePath)
            ? Convert.ToHexStringLower(SHA256.HashData(await File.ReadAllBytesAsync(context.ProfilePath, cancellation)))
            : "";
        return new JsonObject
        {
            ["shopName"] = context.ShopName,
            ["press"] = OfPress(context.Press),
            ["mode"] = Node(context.Mode),
            ["inkSet"] = OfInks(context.InkSet),
            ["stock"] = OfStock(context.Stock),
            ["beside"] = new JsonArray([.. context.Beside.Select(OfStock)]),
            ["condition"] = Node(context.Condition),
            ["optics"] = Node(context.Optics),
            ["profile"] = profile,
            ["items"] = Node(context.Items.Select(i => new { i.Item, i.OrderId, i.Customer, i.Stack, i.Artwork?.Sha256 })),
            ["looks"] = Node(context.Looks.OrderBy(l => l.Key, StringComparer.Ordinal)
                .Select(l => new { Item = l.Key, l.Value.Record.LookId, l.Value.Record.Layers, Planes = l.Value.Record.PlanesSha256 })),
        };
    }

    /// <summary>The same without the fields that say nothing (null).</summary>
    internal static JsonNode WithoutNothing(JsonNode all)
    {
        switch (all)
        {
            case JsonObject fields:
                foreach ((string name, JsonNode? value) in fields.ToList())
                {
                    if (value is null)
                        fields.Remove(name);
                    else
                        WithoutNothing(value);
                }

                break;
            case JsonArray list:
                foreach (JsonNode value in list.OfType<JsonNode>())
                    WithoutNothing(value);
                break;
        }

        return all;
    }

    /// <summary>What differs between inputs kept earlier and inputs now, in words; empty where they are the same.</summary>
    /// <remarks>A field that only one of them has says nothing: another program wrote it, or one that knew it no longer does.</remarks>
    /// <param name="before">Inputs as they were kept.</param>
    /// <param name="now">Inputs as they are.</param>
    internal static IReadOnlyList<string> Differences(JsonElement before, JsonElement now)
    {
        List<string> told = [];
        Compare("", before, now, told);
        return told.Count > MostTold ? [.. told.Take(MostTold), Invariant($"{told.Count - MostTold} more")] : told;
    }

    private static void Compare(string path, JsonElement before, JsonElement now, List<string> told)
    {
        if (before.ValueKind == JsonValueKind.Object && now.ValueKind == JsonValueKind.Object)
        {
            foreach (JsonProperty field in before.EnumerateObject())
            {
                if (now.TryGetProperty(field.Name, out JsonElement other))
                    Compare(path.Length == 0 ? field.Name : Invariant($"{path} {field.Name}"), field.Value, other, told);
            }
        }
        else if (before.ValueKind == JsonValueKind.Array && now.ValueKind == JsonValueKind.Array && before.GetArrayLength() == now.GetArrayLength())
        {
            foreach ((int i, (JsonElement one, JsonElement other)) in before.EnumerateArray().Zip(now.EnumerateArray()).Index())
                Compare(Invariant($"{path} {i + 1}"), one, other, told);
        }
        else if (!JsonElement.DeepEquals(before, now))
        {
            told.Add(Invariant($"{path} {Short(now)} in place of {Short(before)}"));
        }
    }

    private static string Short(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.Object => "others",
        JsonValueKind.Array => Invariant($"{value.GetArrayLength()} entries"),
        JsonValueKind.Null => "nothing",
        _ => value.ToString() is { Length: > 24 } text ? text[..12] + "…" : value.ToString(),
    };

    private static JsonObject OfPress(PressDescription press)
    {
        JsonObject told = Without(press, nameof(PressDescription.Costs), nameof(PressDescription.Care));
        foreach (JsonObject tank in Field(told, nameof(PressDescription.Tanks)).AsArray().OfType<JsonObject>())
            Remove(tank, nameof(Tank.LevelMl));
        return told;
    }

    private static JsonObject OfInks(InkSet inks)
    {
        JsonObject told = Without(inks);
        foreach (JsonObject ink in Field(told, nameof(InkSet.Inks)).AsArray().OfType<JsonObject>())
            Remove(ink, nameof(Ink.PricePerLitre));
        return told;
    }

    private static JsonObject OfStock(Stock stock) =>
        Without(stock, nameof(Stock.OnHand), nameof(Stock.ReorderAt), nameof(Stock.OrderTo), nameof(Stock.Price));

    private static JsonObject Without<T>(T value, params IReadOnlyList<string> names)
    {
        JsonObject told = Node(value)!.AsObject();
        foreach (string name in names)
            Remove(told, name);
        return told;
    }

    private static void Remove(JsonObject told, string name)
    {
        if (!told.Remove(JsonNamingPolicy.CamelCase.ConvertName(name)))
            throw new InvalidOperationException(Invariant($"No field {name} to leave out."));
    }

    private static JsonNode Field(JsonObject told, string name) =>
        told[JsonNamingPolicy.CamelCase.ConvertName(name)] ?? throw new InvalidOperationException(Invariant($"No field {name}."));

    private static JsonNode? Node<T>(T value) => JsonSerializer.SerializeToNode(value, ShopJson.Compact);
}
