using Laydown.Layout.Panels;
using Laydown.Plan.Orders;

namespace Laydown.Plan.Runs;

/// <summary>An item that passed its checks and waits for a run.</summary>
/// <param name="Item">As ordered.</param>
/// <param name="OrderId">Its order.</param>
/// <param name="SmallestTextPt">Smallest text at finished size, points; null for none.</param>
/// <param name="SmallestModuleMm">Narrowest module of a bar code at finished size, mm; null for none.</param>
public sealed record ReadyItem(Item Item, string OrderId, double? SmallestTextPt, double? SmallestModuleMm)
{
    /// <summary>Text and codes found on its picture, and what the order keeps out: where seams between panels should not run, mm on the finished piece.</summary>
    public IReadOnlyList<SeamKeepOut> SeamKeepOuts { get; init; } = [];
}
