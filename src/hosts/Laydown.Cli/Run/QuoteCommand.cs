using System.CommandLine;
using Laydown.Cli.Words;
using Laydown.Measures;
using Laydown.Shop;
using Laydown.Shop.Run;

namespace Laydown.Cli.Run;

/// <summary><c>laydown quote ORDER</c>: writes the quote of an order.</summary>
internal static class QuoteCommand
{
    public static Command Make(Shared shared)
    {
        Argument<string> order = new("order") { Description = "Id of the order." };
        Command command = new("quote", "Writes the quote of an order as PDF.") { order };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed, (shop, answer) => QuoteAsync(shop, answer, parsed.GetRequiredValue(order), cancellation), cancellation));
        return command;
    }

    private static async Task<int> QuoteAsync(ShopServices shop, Answer answer, string id, CancellationToken cancellation)
    {
        Reading<Quote> reading = await shop.QuoteOrder.QuoteAsync(id, cancellation);
        if (!reading.IsTaken)
            return answer.Fail(ExitCodes.Refused, Invariant($"Order {id} could not be quoted."), reading.Faults);

        Quote quote = reading.Value;
        string file = Path.Combine(new ShopFolder(shop.Folder).Quotes, Invariant($"{QuoteOrder.FileNameOf(id)}.pdf"));
        if (answer.AsJson)
        {
            answer.Json("quote", new { file, quote });
            return ExitCodes.Done;
        }

        answer.Table(["item", "what", "pieces", "price"], quote.Lines.Select(l => (IReadOnlyList<string>)
            [l.ItemId, l.Text, Invariant($"{l.Pieces}"), l.Price?.ToString() ?? l.Note ?? ""]));
        answer.Line(Invariant($"net {quote.Net}, tax {quote.TaxPercent:0.##} % {quote.Tax}, in all {quote.Gross} {quote.Currency}; holds until {quote.ValidUntil:yyyy-MM-dd}"));
        answer.Line(file);
        return ExitCodes.Done;
    }
}
