using Laydown.Measures;
using Laydown.Plan.Build;
using Laydown.Plan.Drawings;
using Laydown.Press.Stocks;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Build;

/// <summary>Shows the stack of an item: layers, why they lie so, where they cannot work, and the section.</summary>
/// <param name="catalogue">What the shop has.</param>
/// <param name="store">What it remembers.</param>
public sealed class ShowStack(Catalogue catalogue, IShopStore store)
{
    /// <summary>The stack of an item.</summary>
    /// <param name="itemId">Id of the item.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <returns>The stack, or a fault where item, stack or stock are missing.</returns>
    public async Task<Reading<ItemStack>> ShowAsync(string itemId, CancellationToken cancellation)
    {
        if (await store.ItemAsync(itemId, cancellation) is not { } item)
            return Refused(itemId, "item", itemId, "the id of an item of the shop");
        if (item.Stack is null)
            return Refused(itemId, "stack", "none", "an item whose artwork has been checked and that a press can print");
        if (catalogue.Stocks.FirstOrDefault(s => s.Id == item.Item.StockId) is not Stock stock)
            return Refused(itemId, "stockId", item.Item.StockId, "the id of a stock the shop keeps");
        return Reading.Of(new ItemStack(
            item.Item.Id, stock.Id, item.Stack, StackJudge.Judge(item.Stack, stock), CrossSection.Draw(item.Stack, stock, lit: false),
            item.Stack.Lit ? CrossSection.Draw(item.Stack, stock, lit: true) : null));
    }

    private static Reading<ItemStack> Refused(string itemId, string field, string found, string wanted) =>
        Reading.Refused<ItemStack>(new InputFault(Invariant($"item {itemId}"), null, field, found, wanted));
}
