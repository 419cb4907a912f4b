using System.CommandLine;
using Laydown.Measures;
using Laydown.Plan.Log;
using Laydown.Shop.Log;

namespace Laydown.Cli.Log;

/// <summary><c>laydown log list|learn|charts|review</c>.</summary>
internal static class LogReadCommands
{
    /// <summary>Entries by page.</summary>
    public static Command List(Shared shared)
    {
        Option<LogKind?> kind = new("--kind") { Description = "One kind only." };
        Option<string?> run = new("--run") { Description = "One run only." };
        Option<string?> after = new("--after") { Description = "Where the page before ended." };
        Option<int> rows = new("--rows") { Description = "Entries of a page.", DefaultValueFactory = _ => 50 };
        SpanOptions span = new();
        Command command = new("list", "Lists entries, latest first, page by page.") { kind, run, after, rows };
        return span.On(command, shared, async (parsed, shop, answer, part, cancellation) =>
        {
            if (parsed.GetValue(after) is { } text && LogCursor.Read(text) is null)
                return answer.Fail(ExitCodes.BadUsage, "--after: wanted what the page before gave as next.", []);
            if (parsed.GetValue(rows) is < 1 or > LogWish.MostRows)
                return answer.Fail(ExitCodes.BadUsage, Invariant($"--rows: wanted 1 to {LogWish.MostRows}."), []);
            LogPage page = await shop.Log!.Read.PageAsync(
                new(parsed.GetValue(kind), parsed.GetValue(run), part, LogCursor.Read(parsed.GetValue(after)), parsed.GetValue(rows)), cancellation);
            if (answer.AsJson)
            {
                answer.Json("log-page", new { all = page.All, next = page.Next?.ToString(), entries = page.Entries });
                return ExitCodes.Done;
            }

            foreach (LogEntry entry in page.Entries)
                answer.Line(Invariant($"{entry.Number}  {LogWords.Line(entry)}"));
            answer.Line(Invariant($"{page.Entries.Count} of {page.All}{(page.Next is null ? "" : Invariant($"; next page: --after {page.Next}"))}"));
            return ExitCodes.Done;
        });
    }

    /// <summary>What the log teaches.</summary>
    public static Command Learn(Shared shared)
    {
        Option<bool> ink = new("--ink") { Description = "Of ink instead of minutes." };
        Command command = new("learn", "How far estimates are off, for each press, mode and stock.") { ink };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            async (shop, answer) =>
            {
                EstimateModel model = parsed.GetValue(ink) ? await shop.Log!.Learn.InkAsync(cancellation) : await shop.Log!.Learn.MinutesAsync(cancellation);
                if (answer.AsJson)
                {
                    answer.Json("estimates", new { of = parsed.GetValue(ink) ? "inkMl" : "minutes", runs = model.Runs, setAside = model.SetAside, used = shop.Catalogue.Rates.Policy?.UseLearntTimes ?? false, groups = model.All() });
                    return ExitCodes.Done;
                }

                answer.Table(["press", "mode", "stock", "runs", "actual/estimate", "9 of 10 within"], model.All().Select(c => (IReadOnlyList<string>)
                    [c.PressId, c.ModeId, c.StockId, Invariant($"{c.Runs}"), Invariant($"{c.Factor:0.00}"), Invariant($"{c.Low:0.00}–{c.High:0.00}")]), named: true);
                answer.Line(Invariant($"{model.Runs} runs, {model.SetAside} set aside; {(shop.Catalogue.Rates.Policy is { UseLearntTimes: true } ? "used in plans and quotes" : "shown beside, not used")}"));
                return ExitCodes.Done;
            },
            cancellation));
        return command;
    }

    /// <summary>Charts.</summary>
    public static Command Charts(Shared shared)
    {
        Argument<ChartedFigure> of = new("of") { Description = "What is charted." };
        Option<string?> patch = new("--patch") { Description = "One patch of a colour only; patches have middles of their own." };
        return new SpanOptions().On(new("charts", "Charts of what was measured, with what their rules say.") { of, patch }, shared, async (parsed, shop, answer, part, cancellation) =>
        {
            ShownCharts shown = await shop.Log!.Charts.ShowAsync(parsed.GetRequiredValue(of), part, parsed.GetValue(patch), cancellation);
            if (answer.AsJson)
            {
                answer.Json("log-charts", shown);
                return ExitCodes.Done;
            }

            foreach (ControlChart chart in shown.Charts)
            {
                answer.Line(Invariant($"{chart.Name}: centre {chart.Centre:0.####} {chart.Unit}, limits {chart.Points[^1].Lower:0.####} and {chart.Points[^1].Upper:0.####}, {chart.Signals.Count} signals"));
                foreach (ChartSignal signal in chart.Signals)
                    answer.Line(Invariant($"  {signal.What}"));
            }

            answer.Line(shown.Note);
            return ExitCodes.Done;
        });
    }

    /// <summary>Figures of the shop and causes of remakes.</summary>
    public static Command Review(Shared shared) => new SpanOptions().On(
        new("review", "Use of the presses, yield, share on time, causes of remakes."), shared, async (_, shop, answer, part, cancellation) =>
        {
            Reading<ShopReview> reading = await shop.Log!.Review.ReviewAsync(part, cancellation);
            if (!reading.IsTaken)
                return answer.Fail(ExitCodes.BadUsage, "Nothing is shown.", reading.Faults);
            ShopReview review = reading.Value;
            if (answer.AsJson)
            {
                answer.Json("log-review", review);
                return ExitCodes.Done;
            }

            answer.Line(Invariant($"{review.From:yyyy-MM-dd} to {review.To:yyyy-MM-dd}: {review.Runs} runs done"));
            foreach (Figure figure in review.Figures)
                answer.Line(Invariant($"{figure.Name}  {figure.Value:0.0} {figure.Unit}  {figure.Because}"));
            foreach (RunOverlap overlap in review.Overlaps)
                answer.Line(Invariant($"two runs at once, counted once: {LogWords.Of(overlap)}"));
            answer.Table(["cause", "times", "pieces", "cost", "%", "up to %"], review.Causes.Select(c => (IReadOnlyList<string>)
                [LogWords.Of(c.Cause), Invariant($"{c.Times}"), Invariant($"{c.Pieces}"), c.Cost.ToString(), Invariant($"{c.Percent:0}"), Invariant($"{c.UpToPercent:0}")]), named: true);
            return ExitCodes.Done;
        });
}
