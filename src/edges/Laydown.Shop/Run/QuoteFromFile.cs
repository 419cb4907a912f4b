using Laydown.Measures;
using Laydown.Plan.Costs;

namespace Laydown.Shop.Run;

/// <summary>Reckons a quote from what a file tells of its items, without a shop and without planning.</summary>
public static class QuoteFromFile
{
    /// <summary>The quote, and the cost sheet of each item in its order.</summary>
    /// <returns>Both, or a fault for each finishing that has no rate.</returns>
    public static Reading<ReckonedQuote> Of(QuoteJob job)
    {
        ArgumentNullException.ThrowIfNull(job);
        List<CostSheet> sheets = [];
        List<QuoteLine> lines = [];
        foreach (QuoteJobItem item in job.Items)
        {
            Reading<CostSheet> sheet = JobCosts.Of(job, item, item.Pieces);
            if (!sheet.IsTaken)
                return Reading.Refused<ReckonedQuote>(sheet.Faults);
            sheets.Add(sheet.Value);
            Money price = Rounded(job, sheet.Value.Price);
            lines.Add(new(item.Id, item.Text, item.Pieces, price, null, Because(sheet.Value, price), job.Quantities is { Count: > 0 } all ? [.. all.Select(q => At(job, item, q))] : null));
        }

        var sums = QuoteSums.Of([.. lines.Select(l => l.Price!.Value)], job.Rates);
        Quote quote = new(job.ShopName, new(job.OrderId, job.Customer, job.Day, job.Note, []), job.Day, job.Day.AddDays(job.Rates.QuoteValidDays), job.Rates.Currency,
            lines, sums.Net, job.Rates.TaxPercent, sums.Tax, sums.Gross, sums.SmallOrder);
        return Reading.Of(new ReckonedQuote(quote, sheets));
    }

    private static QuoteBreak At(QuoteJob job, QuoteJobItem item, int pieces)
    {
        CostSheet sheet = JobCosts.Of(job, item, pieces).Value;
        Money price = Rounded(job, sheet.Price);
        return new(pieces, price, Money.FromUnits(price.Units / pieces), item.SetUpMinutes + (item.MinutesEach * pieces), Because(sheet, price));
    }

    private static string Because(CostSheet sheet, Money price) => Invariant($"{sheet.MarkUpWords} = {sheet.Price}, rounded {price - sheet.Price}");

    private static Money Rounded(QuoteJob job, Money price) => (job.Rates.Policy ?? new()).Rounded(price);
}
