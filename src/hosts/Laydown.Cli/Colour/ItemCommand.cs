using System.CommandLine;
using Laydown.Cli.Build;
using Laydown.Measures;
using Laydown.Shop.Colour;

namespace Laydown.Cli.Colour;

/// <summary><c>laydown item shift ID</c>: how far the colours of an item's artwork move when printed.</summary>
internal static class ItemCommand
{
    public static Command Make(Shared shared)
    {
        Argument<string> id = new("id") { Description = "Id of the item." };
        Option<int> page = new("--page") { Description = "Page from 1.", DefaultValueFactory = _ => 1 };
        Option<string?> condition = new("--condition") { Description = "Print condition; the first fitted one of the item's stock when left out." };
        Command shift = new("shift", "How far the colours of an item's artwork move, where, and what it will look like.") { id, page, condition };
        shift.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            async (shop, answer) =>
            {
                Reading<ItemShift> told = await shop.Colour.MapShift.MapAsync(
                    parsed.GetRequiredValue(id), parsed.GetValue(page), parsed.GetValue(condition), cancellation);
                if (!told.IsTaken)
                    return answer.Fail(ExitCodes.Refused, "There is no shift to tell.", told.Faults);
                if (answer.AsJson)
                    answer.Json("item-shift", told.Value);
                else
                {
                    ItemShift s = told.Value;
                    answer.Line(Invariant($"{s.ItemId} page {s.Page} on {s.ConditionId}: mean {s.MeanDeltaE:0.00}, most {s.MaxDeltaE:0.0} dE00"));
                    answer.Line(Invariant($"over 2: {s.Over2Percent:0.0} % of the picture, over 4: {s.Over4Percent:0.0} %, over 6: {s.Over6Percent:0.0} %"));
                    answer.Line(s.MapPath);
                    answer.Line(s.ProofPath);
                }

                return ExitCodes.Done;
            },
            cancellation));
        return new Command("item", "One item.") { shift, StackCommand.Make(shared) };
    }
}
