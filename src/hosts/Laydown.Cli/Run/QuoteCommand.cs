using System.CommandLine;
using System.Globalization;
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
        Option<string?> breaks = new("--breaks") { Description = "Prices at other quantities too, such as 1,10,50,100." };
        Option<bool> compare = new("--compare") { Description = "Compares ways to make it: with others, by itself, in other modes, on other stocks; no paper is written." };
        Option<string[]> stocks = new("--stock") { Description = "With --compare: a stock to try in place of the one ordered.", AllowMultipleArgumentsPerToken = true };
        Command command = new("quote", "Writes the quote of an order as PDF.") { order, breaks, compare, stocks };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            (shop, answer) => (parsed.GetValue(compare), Quantities(parsed.GetValue(breaks))) switch
            {
                (true, _) => QuoteWays.CompareAsync(shop, answer, parsed.GetRequiredValue(order), parsed.GetValue(stocks) ?? [], cancellation),
                (_, { } quantities) => QuoteAsync(shop, answer, parsed.GetRequiredValue(order), quantities, cancellation),
                _ => Task.FromResult(answer.Fail(ExitCodes.BadUsage, "--breaks: wanted whole numbers with commas between, such as 1,10,50,100.", [])),
            },
            cancellation));
        return command;
    }

    private static async Task<int> QuoteAsync(ShopServices shop, Answer answer, string id, IReadOnlyList<int> quantities, CancellationToken cancellation)
    {
        Reading<Quote> reading = await shop.QuoteOrder.QuoteAsync(id, quantities, cancellation);
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
            [l.ItemId, l.Text, l.Made is { } made ? Invariant($"{l.Pieces} ({made} made)") : Invariant($"{l.Pieces}"), l.Price?.ToString() ?? l.Note ?? ""]));
        foreach (QuoteLine line in quote.Lines.Where(l => l.Breaks is not null))
            answer.Table(["item", "pieces", "price", "each", "min", "because"], line.Breaks!.Select(b => (IReadOnlyList<string>)
                [line.ItemId, Invariant($"{b.Pieces}"), b.Price?.ToString() ?? "–", b.Each?.ToString() ?? "–", Invariant($"{b.Minutes:0}"), b.Because]), named: true);
        answer.Line(Invariant($"net {quote.Net}, tax {quote.TaxPercent:0.##} % {quote.Tax}, in all {quote.Gross} {quote.Currency}; holds until {quote.ValidUntil:yyyy-MM-dd}"));
        answer.Line(file);
        return ExitCodes.Done;
    }

    // None for no option; null for what cannot be read.
    private static IReadOnlyList<int>? Quantities(string? text)
    {
        List<int> quantities = [];
        foreach (string part in text?.Split(',', StringSplitOptions.TrimEntries) ?? [])
        {
            if (!int.TryParse(part, NumberStyles.None, CultureInfo.InvariantCulture, out int quantity))
                return null;
            quantities.Add(quantity);
        }

        return quantities;
    }
}
