using System.CommandLine;
using Laydown.Cli.Words;
using Laydown.Shop;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Cli.Run;

/// <summary><c>laydown plan</c>: takes orders, checks what waits and plans what is ready.</summary>
internal static class PlanCommand
{
    public static Command Make(Shared shared)
    {
        Option<bool> strict = new("--strict") { Description = "End with 1 when an item is held back." };
        Command command = new("plan", "Takes orders, checks what waits and puts what is ready into runs.") { strict };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            (shop, answer) => PlanAsync(shop, answer, shared.DayOf(parsed) ?? default, parsed.GetValue(strict), cancellation),
            cancellation));
        return command;
    }

    private static async Task<int> PlanAsync(ShopServices shop, Answer answer, DateOnly today, bool strict, CancellationToken cancellation)
    {
        await shop.TakeOrders.TakeAsync(cancellation);
        await shop.CheckItems.CheckAsync(cancellation);
        PlannedRuns planned = await shop.PlanRuns.PlanAsync(today, cancellation);
        List<ItemRecord> held = [.. (await shop.Store.OrdersAsync(cancellation)).SelectMany(o => o.Items).Where(i => i.State == ItemState.Stopped)];
        if (answer.AsJson)
        {
            answer.Json("plan", new { runs = planned.Runs, dissolved = planned.Dissolved, held });
        }
        else
        {
            answer.Line(Invariant($"{planned.Runs.Count} runs planned."));
            RunWords.Table(answer, planned.Runs);
            held.ForEach(i => answer.Line(Invariant($"{i.Item.Id} is held back: {StateWords.WhyHeld(i)}")));
        }

        return strict && held.Count > 0 ? ExitCodes.Held : ExitCodes.Done;
    }
}
