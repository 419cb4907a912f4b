using Laydown.Cli.Words;
using Laydown.Measures;
using Laydown.Shop;
using Laydown.Shop.Run;

namespace Laydown.Cli.Run;

/// <summary><c>laydown quote ORDER --compare</c>: an order made in several ways.</summary>
internal static class QuoteWays
{
    public static async Task<int> CompareAsync(ShopServices shop, Answer answer, string id, IReadOnlyList<string> stocks, CancellationToken cancellation)
    {
        Reading<IReadOnlyList<QuoteScenario>> reading = await shop.TryOrder!.CompareAsync(id, stocks, cancellation, new PricedSteps(answer));
        if (!reading.IsTaken)
            return answer.Fail(ExitCodes.Refused, Invariant($"Order {id} could not be compared."), reading.Faults);
        if (answer.AsJson)
        {
            answer.Json("quote-ways", new { orderId = id, currency = shop.Catalogue.Rates.Currency, scenarios = reading.Value });
            return ExitCodes.Done;
        }

        answer.Table(["way", "price", "cost", "min", "ink ml", "because"], reading.Value.Select(s => (IReadOnlyList<string>)
            [s.Name, s.Price?.ToString() ?? "–", s.Cost?.ToString() ?? "–", Invariant($"{s.Minutes:0}"), Invariant($"{s.InkMl:0}"), s.Because]), named: true);
        return ExitCodes.Done;
    }
}
