using System.CommandLine;
using Laydown.Cli.Words;
using Laydown.Measures;
using Laydown.Shop;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Cli.Run;

/// <summary><c>laydown day</c>: the whole day's work.</summary>
internal static class DayCommand
{
    public static Command Make(Shared shared)
    {
        Option<bool> strict = new("--strict") { Description = "End with 1 when an item is held back, an order refused or a run aborted." };
        Command command = new("day", "Takes orders, checks, solves day and night panels, plans, makes every run and quotes every order.") { strict };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            (shop, answer) => WorkAsync(shop, answer, shared.DayOf(parsed) ?? default, parsed.GetValue(strict), cancellation),
            cancellation));
        return command;
    }

    private static async Task<int> WorkAsync(ShopServices shop, Answer answer, DateOnly today, bool strict, CancellationToken cancellation)
    {
        WorkDay day = new(shop, TimeProvider.System);
        DayReport report = await Told.WhileAsync(
            answer, shop.Progress, stations => day.WorkAsync(today, stations, cancellation), cancellation);
        if (answer.AsJson)
            answer.Json("day", Short(report));
        else
            Say(answer, report, shop.Folder);

        List<InputFault> faults = [.. report.Faults, .. report.Held.SelectMany(i => i.Faults)];
        if (Environments.CodeFor(faults) == ExitCodes.Missing)
        {
            if (!answer.AsJson)
                await answer.Error.WriteLineAsync("Ghostscript is missing: install the Debian package ghostscript and run the day again. All that did not need it is done.");
            return ExitCodes.Missing;
        }

        bool held = report.Held.Count + report.Refused.Count + report.Aborted.Count > 0;
        return strict && held ? ExitCodes.Held : ExitCodes.Done;
    }

    // Whole runs are for `run show`; here an id and what came of it will do.
    private static object Short(DayReport report) => new
    {
        report.Stations,
        report.Orders,
        report.Refused,
        Runs = report.Runs.Select(r => new
        {
            r.Run.Id,
            r.State,
            r.Run.PressId,
            r.Run.StockId,
            Sheets = r.Run.SheetCount,
            Minutes = r.Run.Time.TotalMinutes,
            r.Run.Cost.Price,
            r.FolderName,
            r.Files,
        }),
        report.Aborted,
        Held = report.Held.Select(i => new { i.Item.Id, i.Item.Title, Why = StateWords.WhyHeld(i) }),
        report.Quotes,
        report.Faults,
    };

    private static void Say(Answer answer, DayReport report, string folder)
    {
        answer.Line(Invariant($"{report.Orders} orders, {report.Refused.Count} refused, {report.Runs.Count} runs made, {report.Held.Count} items held back, {report.Quotes.Count} quotes."));
        RunWords.Table(answer, report.Runs);
        foreach (RefusedOrder order in report.Refused)
            answer.Line(Invariant($"{order.FileName} refused: {order.Faults[0]}"));
        foreach (ItemRecord item in report.Held)
            answer.Line(Invariant($"{item.Item.Id} is held back: {StateWords.WhyHeld(item)}"));
        foreach (InputFault fault in report.Faults)
            answer.Line(Invariant($"not done: {fault}"));
        answer.Line(Invariant($"{report.Stations.Sum(s => s.Seconds):0.0} s: {string.Join(", ", report.Stations.Select(s => Invariant($"{s.Name} {s.Seconds:0.0}")))}"));
        answer.Line(folder);
    }
}
