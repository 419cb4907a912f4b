using System.CommandLine;
using System.Globalization;
using Laydown.Cli.Words;
using Laydown.Measures;
using Laydown.Shop;
using Laydown.Shop.Run;

namespace Laydown.Cli.Run;

/// <summary><c>laydown quote ORDER</c>: writes the quote of an order; <c>laydown quote --file FILE</c>: reckons one from a file alone.</summary>
internal static class QuoteCommand
{
    public static Command Make(Shared shared)
    {
        Argument<string?> order = new("order") { Description = "Id of the order.", Arity = ArgumentArity.ZeroOrOne };
        Option<string?> file = new("--file") { Description = "Reckon from this file alone, JSON as in schemas/quote-job.schema.json, without a shop." };
        Option<string?> pdf = new("--out") { Description = "With --file: the PDF to write." };
        Option<string?> breaks = new("--breaks") { Description = "Prices at other quantities too, such as 1,10,50,100." };
        Option<bool> compare = new("--compare") { Description = "Compares ways to make it: with others, by itself, in other modes, on other stocks; no paper is written." };
        Option<string[]> stocks = new("--stock") { Description = "With --compare: a stock to try in place of the one ordered.", AllowMultipleArgumentsPerToken = true };
        Command command = new("quote", "Writes the quote of an order as PDF.") { order, file, pdf, breaks, compare, stocks };
        command.SetAction((parsed, cancellation) => (parsed.GetValue(file), parsed.GetValue(order)) switch
        {
            ({ } path, null) => QuoteFileAnswer.TellAsync(shared.Answer(parsed), Path.GetFullPath(path), parsed.GetValue(pdf), cancellation),
            (null, { } id) => InShopAsync(shared, parsed, id, parsed.GetValue(compare), Quantities(parsed.GetValue(breaks)), parsed.GetValue(stocks) ?? [], cancellation),
            _ => Task.FromResult(shared.Answer(parsed).Fail(ExitCodes.BadUsage, "quote: wanted the id of an order, or --file.", [])),
        });
        return command;
    }

    private static Task<int> InShopAsync(
        Shared shared, ParseResult parsed, string id, bool compare, IReadOnlyList<int>? breaks, IReadOnlyList<string> stocks, CancellationToken cancellation) => shared.InShopAsync(
            parsed,
            (shop, answer) => (compare, breaks) switch
            {
                (true, _) => QuoteWays.CompareAsync(shop, answer, id, stocks, cancellation),
                (_, { } quantities) => QuoteAsync(shop, answer, id, quantities, cancellation),
                _ => Task.FromResult(answer.Fail(ExitCodes.BadUsage, "--breaks: wanted whole numbers with commas between, such as 1,10,50,100.", [])),
            },
            cancellation);

    private static async Task<int> QuoteAsync(ShopServices shop, Answer answer, string id, IReadOnlyList<int> quantities, CancellationToken cancellation)
    {
        Reading<Quote> reading = await shop.QuoteOrder.QuoteAsync(id, quantities, cancellation, new PricedSteps(answer));
        if (!reading.IsTaken)
            return answer.Fail(ExitCodes.Refused, Invariant($"Order {id} could not be quoted."), reading.Faults);

        Quote quote = reading.Value;
        string file = Path.Combine(new ShopFolder(shop.Folder).Quotes, Invariant($"{QuoteOrder.FileNameOf(id)}.pdf"));
        if (answer.AsJson)
        {
            answer.Json("quote", new { file, quote });
            return ExitCodes.Done;
        }

        Tell(answer, quote);
        answer.Line(file);
        return ExitCodes.Done;
    }

    /// <summary>The quote in words.</summary>
    internal static void Tell(Answer answer, Quote quote)
    {
        answer.Table(["item", "what", "pieces", "price"], quote.Lines.Select(l => (IReadOnlyList<string>)
            [l.ItemId, l.Text, l.Made is { } made ? Invariant($"{l.Pieces} ({made} made)") : Invariant($"{l.Pieces}"), l.Price?.ToString() ?? l.Note ?? ""]));
        foreach (QuoteLine line in quote.Lines.Where(l => l.Breaks is not null))
            answer.Table(["item", "pieces", "price", "each", "min", "because"], line.Breaks!.Select(b => (IReadOnlyList<string>)
                [line.ItemId, Invariant($"{b.Pieces}"), b.Price?.ToString() ?? "–", b.Each?.ToString() ?? "–", Invariant($"{b.Minutes:0}"), b.Because]), named: true);
        if (quote.SmallOrder.Cents > 0)
            answer.Line(Invariant($"small order {quote.SmallOrder}: what is missing to the shop's least sum"));
        answer.Line(Invariant($"net {quote.Net}, tax {quote.TaxPercent:0.##} % {quote.Tax}, in all {quote.Gross} {quote.Currency}; holds until {quote.ValidUntil:yyyy-MM-dd}"));
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
