using System.CommandLine;
using Laydown.Cli.Words;
using Laydown.Measures;
using Laydown.Plan.Week;
using Laydown.Shop;
using Laydown.Shop.Week;

namespace Laydown.Cli.Week;

/// <summary><c>laydown run press ID</c>: a run on every other press, and one of them taken.</summary>
internal static class RunPressCommand
{
    public static Command Make(Shared shared)
    {
        Argument<string> id = new("id") { Description = "Id of the run, such as R-20261126-01." };
        Option<string?> take = new("--take") { Description = "Id of the press to put it on; says by whom and why." };
        Option<string> by = new("--by") { Description = "Who puts it there.", DefaultValueFactory = _ => "" };
        Option<string> reason = new("--reason") { Description = "Why; kept with the run and printed on its sheet.", DefaultValueFactory = _ => "" };
        Option<DateTime?> at = new("--at") { Description = "When it is to begin by the shop's clock, such as 2026-11-27T10:00." };
        Command command = new("press", "Shows what a run would be on every other press; on request plans it anew for one of them.") { id, take, by, reason, at };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            async (shop, answer) => parsed.GetValue(take) is { } press
                ? WeekCommand.Tell(answer, await shop.Week.PutOnPressAsync(
                    parsed.GetRequiredValue(id), press, parsed.GetValue(by) ?? "", parsed.GetValue(reason) ?? "", parsed.GetValue(at), cancellation))
                : Tell(answer, shop, await shop.Week.ElsewhereAsync(parsed.GetRequiredValue(id), new TriedPresses(answer), cancellation)),
            cancellation));
        return command;
    }

    private static int Tell(Answer answer, ShopServices shop, Reading<IReadOnlyList<WeekElsewhere>> elsewhere)
    {
        if (!elsewhere.IsTaken)
            return answer.Fail(ExitCodes.Refused, "The run was not tried on other presses.", elsewhere.Faults);
        if (answer.AsJson)
        {
            answer.Json("week-presses", elsewhere.Value);
            return ExitCodes.Done;
        }

        foreach (WeekElsewhere one in elsewhere.Value)
        {
            if (one.Offer is not { } offer)
            {
                answer.Line(Invariant($"{one.PressId}  cannot print it. {string.Join(" ", one.Faults)}"));
                continue;
            }

            answer.Line(Invariant($"{one.PressId}  mode {offer.ModeId}, {offer.Minutes:0.0} min in place of {offer.MinutesNow:0.0}, {offer.Sheets} sheets in place of {offer.SheetsNow}, cost {offer.Cost} {shop.Catalogue.Rates.Currency} in place of {offer.CostNow}."));
            answer.Line(Invariant($"  {offer.There.What} Then {(offer.There.LateThen == 0 ? "in time" : WeekReasons.Words(offer.There.LateThen) + " late")}, now {(offer.LateNow == 0 ? "in time" : WeekReasons.Words(offer.LateNow) + " late")}."));
        }

        return ExitCodes.Done;
    }
}
