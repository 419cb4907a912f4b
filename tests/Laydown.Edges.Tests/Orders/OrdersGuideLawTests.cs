using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Laydown.Formats.Json;
using Laydown.Formats.Schemas;
using Laydown.Measures;
using Laydown.Plan.Orders;

namespace Laydown.Edges.Tests.Orders;

/// <summary>The guide's page on orders explains the fields there are, and no others; its example is an order that is taken.</summary>
public sealed partial class OrdersGuideLawTests
{
    private static readonly string Guide = File.ReadAllText(Path.Combine(Checkout.Root, "docs", "guide", "orders.md"));

    [Theory]
    [InlineData("The order", "")]
    [InlineData("An item", "items")]
    [InlineData("Finishing", "items/finishing")]
    public void Every_field_has_a_row_and_every_row_is_a_field(string heading, string path)
    {
        JsonNode schema = JsonNode.Parse(PublishedSchemas.Text("order"))!;
        foreach (string part in path.Split('/', StringSplitOptions.RemoveEmptyEntries))
            schema = schema["properties"]![part]!["items"]!;

        Assert.Equal(schema["properties"]!.AsObject().Select(p => p.Key).Order(StringComparer.Ordinal), RowsUnder(heading).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void The_example_is_taken()
    {
        string json = Example().Match(Guide).Groups[1].Value;
        using MemoryStream stream = new(System.Text.Encoding.UTF8.GetBytes(json));
        Reading<Order> order = LaydownJson.Read<Order>("order.json", stream);

        Assert.True(order.IsTaken, string.Join("\n", order.Faults));
        Assert.Equal("gate-back.pdf", Assert.Single(order.Value.Items).BackArtwork);
    }

    // Names in the first cell of each row of the section's table.
    private static IEnumerable<string> RowsUnder(string heading)
    {
        string section = Guide[Guide.IndexOf(Invariant($"\n## {heading}\n"), StringComparison.Ordinal)..].Split("\n## ")[1];
        return section.Split('\n').Where(l => l.StartsWith("| `", StringComparison.Ordinal)).SelectMany(l => Name().Matches(l.Split('|')[1]).Select(m => m.Groups[1].Value));
    }

    [GeneratedRegex("`([A-Za-z]+)`")]
    private static partial Regex Name();

    [GeneratedRegex("```json\n(.*?)```", RegexOptions.Singleline)]
    private static partial Regex Example();
}
