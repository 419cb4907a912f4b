using Laydown.Shop.Orders;

namespace Laydown.Shop.Check;

/// <summary>What came of checking.</summary>
/// <param name="Items">Items that were looked at, ready or stopped.</param>
public sealed record CheckedItems(IReadOnlyList<ItemRecord> Items)
{
    /// <summary>How many are held back.</summary>
    public int Stopped => Items.Count(i => i.State == ItemState.Stopped);
}
