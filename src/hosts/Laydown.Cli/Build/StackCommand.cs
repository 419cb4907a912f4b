using System.CommandLine;
using Laydown.Measures;
using Laydown.Press.Stacks;
using Laydown.Shop.Build;

namespace Laydown.Cli.Build;

/// <summary><c>laydown item stack ID</c>: the layers of an item, why they lie so, and where they cannot work.</summary>
internal static class StackCommand
{
    public static Command Make(Shared shared)
    {
        Argument<string> id = new("id") { Description = "Id of the item." };
        Command stack = new("stack", "The layers of an item, why they lie so, and where they cannot work; the section as SVG with --json.") { id };
        stack.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            async (shop, answer) =>
            {
                Reading<ItemStack> told = await new ShowStack(shop.Catalogue, shop.Store).ShowAsync(parsed.GetRequiredValue(id), cancellation);
                if (!told.IsTaken)
                    return answer.Fail(ExitCodes.Refused, "There is no stack to show.", told.Faults);
                if (answer.AsJson)
                    answer.Json("item-stack", told.Value);
                else
                    Tell(told.Value, answer);
                return ExitCodes.Done;
            },
            cancellation));
        return stack;
    }

    private static string Mask(Layer layer)
    {
        string[] choke = layer.ChokeMm == 0 ? [] : [Invariant($"{(layer.ChokeMm > 0 ? "choke" : "spread")} {Math.Abs(layer.ChokeMm):0.##} mm")];
        return string.Join(", ", choke.Concat(layer.Shaping.Words()));
    }

    private static void Tell(ItemStack told, Words.Answer answer)
    {
        answer.Table(
            ["printed", "layer", "from", "strength %", "face", "page", "reads", "mask"],
            told.Stack.Layers.Select((l, i) => (IReadOnlyList<string>)
            [
                Invariant($"{i + 1}"), Invariant($"{l.Group}"), Invariant($"{(l.Negative ? "not " : "")}{l.Source?.ToString() ?? "picture"}"),
                Invariant($"{l.StrengthPercent:0.#}"), l.Face == SheetFace.First ? "first" : "second", Invariant($"{l.ArtworkPage}"),
                l.IsFlood ? "either way" : l.Mirrored ? "mirrored" : "right", Mask(l),
            ]));
        foreach (string because in told.Stack.Because)
            answer.Line(because);
        foreach (Finding finding in told.Findings)
            answer.Line(Invariant($"{finding.Severity}: {finding.What} Found {finding.Measured}; wanted {finding.Wanted}. {finding.Repair}"));
    }
}
