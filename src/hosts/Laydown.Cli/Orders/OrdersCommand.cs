using System.CommandLine;
using Laydown.Cli.Words;
using Laydown.Shop;
using Laydown.Shop.Orders;

namespace Laydown.Cli.Orders;

/// <summary><c>laydown orders</c>: takes in what lies in the orders' folder and lists all orders.</summary>
internal static class OrdersCommand
{
    public static Command Make(Shared shared)
    {
        Option<bool> strict = new("--strict") { Description = "End with 1 when an item is held back or an order refused." };
        Command command = new("orders", "Takes in new orders and lists all of them with their items.") { strict };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed, (shop, answer) => ListAsync(shop, answer, parsed.GetValue(strict), cancellation), cancellation));
        return command;
    }

    private static async Task<int> ListAsync(ShopServices shop, Answer answer, bool strict, CancellationToken cancellation)
    {
        await shop.TakeOrders.TakeAsync(cancellation);
        IReadOnlyList<OrderRecord> orders = await shop.Store.OrdersAsync(cancellation);
        IReadOnlyList<RefusedOrder> refused = await shop.Store.RefusedOrdersAsync(cancellation);
        if (answer.AsJson)
            answer.Json("orders", new { orders, refused });
        else
            Say(answer, orders, refused);
        bool held = refused.Count > 0 || orders.SelectMany(o => o.Items).Any(i => i.State == ItemState.Stopped);
        return strict && held ? ExitCodes.Held : ExitCodes.Done;
    }

    private static void Say(Answer answer, IReadOnlyList<OrderRecord> orders, IReadOnlyList<RefusedOrder> refused)
    {
        answer.Table(
            ["item", "title", "size", "pieces", "stock", "due", "state", "run"],
            orders.SelectMany(o => o.Items).Select(i => (IReadOnlyList<string>)
            [
                i.Item.Id, i.Item.Title, i.Item.Finished.ToString(), Invariant($"{i.Item.Quantity}"), i.Item.StockId,
                Invariant($"{i.Item.Due:yyyy-MM-dd}"), StateWords.Of(i.State), i.RunId ?? "",
            ]));
        foreach (ItemRecord item in orders.SelectMany(o => o.Items).Where(i => i.State == ItemState.Stopped))
            answer.Line(Invariant($"{item.Item.Id} is held back: {StateWords.WhyHeld(item)}"));
        foreach (RefusedOrder order in refused)
        {
            answer.Line(Invariant($"{order.FileName} refused:"));
            foreach (Measures.InputFault fault in order.Faults)
                answer.Line(Invariant($"  {fault}"));
        }
    }
}
