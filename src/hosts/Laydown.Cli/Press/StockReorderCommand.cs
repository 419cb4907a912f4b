using System.CommandLine;
using Laydown.Measures;
using Laydown.Plan.StockRoom;

namespace Laydown.Cli.Press;

/// <summary><c>laydown stock reorder</c>: from when on a stock is ordered.</summary>
internal static class StockReorderCommand
{
    public static Command Make(Shared shared)
    {
        Argument<string> stock = new("stock") { Description = "Id of the stock." };
        Option<int?> at = new("--at") { Description = "What must be free, or more is ordered: boards or blanks, of a roll metres; without it nobody watches the stock." };
        Option<int?> to = new("--to") { Description = "Up to how much is ordered then (default: the point itself)." };
        Option<string> by = new("--by") { Description = "Who sets it.", DefaultValueFactory = _ => "operator" };
        Command command = new("reorder", "Sets from when on a stock is ordered, in place of what its file says.") { stock, at, to, by };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            async (shop, answer) =>
            {
                Reading<ReorderPoint> set = await shop.Press.Reorder.SetAsync(new(parsed.GetRequiredValue(stock), parsed.GetValue(at), parsed.GetValue(to), parsed.GetRequiredValue(by)), cancellation);
                if (!set.IsTaken)
                    return answer.Fail(ExitCodes.Refused, "Nothing is set.", set.Faults);
                if (answer.AsJson)
                    answer.Json("reorder-point", set.Value);
                else
                    answer.Line(set.Value is { At: { } point } one ? Invariant($"{one.StockId}: ordered at {point}, up to {one.To ?? point}") : Invariant($"{set.Value.StockId}: nobody watches it"));
                return ExitCodes.Done;
            },
            cancellation));
        return command;
    }
}
