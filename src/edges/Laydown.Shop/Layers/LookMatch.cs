using Laydown.Measures;
using Laydown.Press.Stacks;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Layers;

/// <summary>Tells whether a look still belongs to its item: same artwork, size, sheet and layers.</summary>
public static class LookMatch
{
    private const double SlackMm = 0.01;

    /// <summary>The look, or each way in which the item has become another since it was made.</summary>
    public static Reading<LookRecord> Of(ItemRecord item, LookRecord look)
    {
        List<InputFault> faults = [];
        if (look.ArtworkSha256 is { } sha && !string.Equals(sha, item.Artwork?.Sha256, StringComparison.OrdinalIgnoreCase))
            Add("artwork", "a look of another file", Invariant($"a look made from {item.Item.Artwork} as it is now"));
        if (!string.Equals(look.StockId, item.Item.StockId, StringComparison.Ordinal))
            Add("stockId", look.StockId, item.Item.StockId);
        SizeMm printed = item.Item.Printed;
        if (Math.Abs(look.SizeMm.WidthMm - printed.WidthMm) > SlackMm || Math.Abs(look.SizeMm.HeightMm - printed.HeightMm) > SlackMm)
            Add("size", look.SizeMm.ToString(), Invariant($"{printed}, the printed size"));
        if (item.Stack is { } stack && !stack.Layers.Select(l => (l.Face, l.Group)).SequenceEqual(look.Layers.Select(l => (l.Face, l.Group))))
            Add("layers", string.Join(", ", look.Layers.Select(l => Words(l.Face, l.Group))), string.Join(", ", stack.Layers.Select(l => Words(l.Face, l.Group))));
        return faults.Count > 0 ? Reading.Refused<LookRecord>(faults) : Reading.Of(look);

        void Add(string field, string found, string wanted) =>
            faults.Add(new(Invariant($"look {look.LookId} of {item.Item.Id}"), null, field, found, wanted));
    }

    private static string Words(SheetFace face, InkGroup group) =>
        Invariant($"{group.ToString().ToLowerInvariant()} on the {(face == SheetFace.First ? "first" : "second")} surface");
}
