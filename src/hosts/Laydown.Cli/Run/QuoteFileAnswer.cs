using Laydown.Cli.Words;
using Laydown.Measures;
using Laydown.Plan.Costs;
using Laydown.Shop.Press;
using Laydown.Shop.Run;

namespace Laydown.Cli.Run;

/// <summary><c>laydown quote --file FILE [--out PDF]</c>: a quote from a file alone.</summary>
internal static class QuoteFileAnswer
{
    public static async Task<int> TellAsync(Answer answer, string path, string? pdf, CancellationToken cancellation)
    {
        Reading<ReckonedQuote> reading = Wiring.QuoteFiles().Quote(path).Then(QuoteFromFile.Of);
        if (!reading.IsTaken)
            return answer.Fail(ExitCodes.Refused, Invariant($"{Path.GetFileName(path)} could not be quoted."), reading.Faults);
        (Quote quote, IReadOnlyList<CostSheet> costs) = (reading.Value.Quote, reading.Value.Costs);
        string? written = pdf is null ? null : Path.GetFullPath(pdf);
        if (written is not null)
            await StockLabels.SaveAsync(written, Wiring.Documents().QuotePdf(quote), cancellation);
        if (answer.AsJson)
        {
            answer.Json("quote", new { file = written, quote, costs });
            return ExitCodes.Done;
        }

        foreach ((QuoteLine line, CostSheet sheet) in quote.Lines.Zip(costs))
        {
            answer.Table(["item", "cost", "amount", "because"], sheet.Lines.Select(l => (IReadOnlyList<string>)[line.ItemId, l.Name, l.Amount.ToString(), l.Because]), named: true);
            answer.Line(Invariant($"{line.ItemId}: {line.Because}"));
        }

        QuoteCommand.Tell(answer, quote);
        if (written is not null)
            answer.Line(written);
        return ExitCodes.Done;
    }
}
