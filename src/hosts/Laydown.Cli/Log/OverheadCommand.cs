using System.CommandLine;
using System.Globalization;
using Laydown.Cli.Words;
using Laydown.Measures;
using Laydown.Plan.Costs;
using Laydown.Plan.Log;
using Laydown.Shop;
using Laydown.Shop.Log;

namespace Laydown.Cli.Log;

/// <summary><c>laydown log overhead</c>: overhead that runs carried against what was spent.</summary>
internal static class OverheadCommand
{
    public static Command Make(Shared shared)
    {
        Option<string?> from = new("--from") { Description = "First day (default: the first of the month)." };
        Option<string?> to = new("--to") { Description = "Last day (default: today)." };
        Option<CountedRuns> count = new("--count") { Description = "Runs that count: done in these days by the log, or due in them." };
        Command command = new("overhead", "Overhead that the prices of runs carried against what was spent: over- or under-applied, and why.") { from, to, count, Spent(shared) };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            async (shop, answer) => TryDay(parsed.GetValue(from), out DateOnly? first) && TryDay(parsed.GetValue(to), out DateOnly? last)
                ? Show(shop, answer, await shop.Log!.Overhead.ReviewAsync(first, last, parsed.GetValue(count), cancellation))
                : answer.Fail(ExitCodes.BadUsage, "--from, --to: wanted a day such as 2026-11-26.", []),
            cancellation));
        return command;
    }

    private static Command Spent(Shared shared)
    {
        Argument<decimal> amount = new("amount") { Description = "How much, without tax." };
        Option<string> what = new("--what") { Description = "For what, such as \"rent of November\".", Required = true };
        Option<string?> kind = new("--kind") { Description = "Kind of overhead, where the shop tells several." };
        Option<string?> day = new("--day") { Description = "Day (default: today)." };
        Option<string> by = new("--by") { Description = "Who tells.", DefaultValueFactory = _ => "" };
        Command command = new("spent", "Writes overhead down that was spent; log strike takes it back.") { amount, what, kind, day, by };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            async (shop, answer) =>
            {
                if (!TryDay(parsed.GetValue(day), out DateOnly? when))
                    return answer.Fail(ExitCodes.BadUsage, "--day: wanted a day such as 2026-11-26.", []);
                IReadOnlyList<string> kinds = Overheads.Names(shop.Catalogue.Rates);
                if (Math.Abs(parsed.GetValue(amount)) >= 1e12m)
                    return answer.Fail(ExitCodes.BadUsage, "amount: wanted under 1 000 000 000 000.", []);
                LogEntry entry = new(0, At(when, shared.DayOf(parsed)), LogKind.Overhead, null, "", parsed.GetRequiredValue(by),
                    Overhead: new(parsed.GetValue(kind) ?? (kinds.Count == 1 ? kinds[0] : ""), Money.FromUnits(parsed.GetValue(amount)), parsed.GetRequiredValue(what)));
                return await LogOptions.KeepAsync(shop, answer, entry, cancellation);
            },
            cancellation));
        return command;
    }

    private static int Show(ShopServices shop, Answer answer, Reading<OverheadReview> reading)
    {
        if (!reading.IsTaken)
            return answer.Fail(ExitCodes.Refused, "Overhead cannot be reviewed.", reading.Faults);
        OverheadReview review = reading.Value;
        if (answer.AsJson)
        {
            answer.Json("overhead-review", new { shop.Catalogue.Rates.Currency, review, left = review.Left });
            return ExitCodes.Done;
        }

        answer.Line(Invariant($"{review.From:yyyy-MM-dd} to {review.To:yyyy-MM-dd}, {review.Runs} runs, {shop.Catalogue.Rates.Currency}"));
        answer.Table(["overhead", "carried", "spent", "over", "by spending", "by volume", "how"], review.Lines.Select(l => (IReadOnlyList<string>)
            [l.Name, l.Applied.ToString(), l.Spent.ToString(), l.Over.ToString(), l.BySpending?.ToString() ?? "–", l.ByVolume?.ToString() ?? "–", l.Because]), named: true);
        answer.Line(Invariant($"cost as carried {review.CostOfWork}, {(review.Spent.Cents == 0 ? "" : Invariant($"as spent {review.CostAdjusted}, "))}price {review.Price}{(review.Spent.Cents == 0 ? "" : Invariant($", left {review.Left}"))}"));
        answer.Line(review.Words);
        return ExitCodes.Done;
    }

    // The clock's own instant for today, noon for another day.
    private static DateTimeOffset At(DateOnly? day, DateOnly? today) =>
        day is not { } told || told == today ? default : new DateTimeOffset(told.ToDateTime(new TimeOnly(12, 0), DateTimeKind.Local));

    private static bool TryDay(string? text, out DateOnly? day)
    {
        day = DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly read) ? read : null;
        return text is null || day is not null;
    }
}
