using Laydown.Shop.Proof;

namespace Laydown.Edges.Tests.Proof;

/// <summary>Links and answers of the invented Saltmarsh Observatory.</summary>
internal static class ProofSamples
{
    public const string Item = "TW-1042-1";
    public static readonly DateTimeOffset Noon = new(2026, 11, 26, 12, 0, 0, TimeSpan.Zero);

    public static ProofLink Link(string id) => new(id, Item, "L-1", "the visitor centre", Noon, Noon.AddDays(14), null);

    /// <summary>An answer whose comment is its number; the id follows from link and number.</summary>
    public static ProofAnswer Answer(string linkId, int number) => new(
        Id(linkId, number), linkId, Item, "L-1", Noon.AddSeconds(number), ProofVerdict.Change, "Ada", Invariant($"{number}"), new(10.5, 20.25, PinView.Night), new('a', 64), false);

    private static string Id(string linkId, int number) => Invariant($"{linkId}/{number}");
}
