using System.CommandLine;
using Laydown.Cli.Words;
using Laydown.Measures;
using Laydown.Shop;
using Laydown.Shop.Layers;
using Laydown.Shop.Orders;

namespace Laydown.Cli.Layers;

/// <summary><c>laydown panel …</c>: looks of items, made, listed, shown and chosen.</summary>
internal static class PanelCommand
{
    public static Command Make(Shared shared) => new("panel", "Looks of a piece: solved from two pictures or separated from its pages, listed, shown, chosen for printing.")
    {
        Solve(shared), Separate(shared), List(shared), Show(shared), Choose(shared),
    };

    private static Command Solve(Shared shared)
    {
        SolveOptions options = new();
        Command command = options.AddTo(new("solve", "Solves a panel: one picture by day, another with the lamp on; from an item's pages or from two files."));
        command.SetAction((parsed, cancellation) =>
        {
            (PanelRequest? request, string? fault) = options.Read(parsed);
            return request is null
                ? Task.FromResult(shared.Answer(parsed).Fail(ExitCodes.BadUsage, fault ?? "", []))
                : shared.InShopAsync(parsed, (shop, answer) => SolveAsync(shop, answer, request, parsed.GetValue(options.Choose), cancellation), cancellation);
        });
        return command;
    }

    private static async Task<int> SolveAsync(ShopServices shop, Answer answer, PanelRequest request, bool choose, CancellationToken cancellation)
    {
        Reading<StoredLook> made;
        using (WorkLine line = new(answer, "solve"))
            made = await shop.Layers.SolvePanel.SolveAsync(request, line, cancellation);
        if (!made.IsTaken)
            return answer.Fail(Environments.CodeFor(made.Faults), "No panel was solved; nothing of it is left.", made.Faults);
        if (choose && request.ItemId is { } item)
        {
            Reading<ItemRecord> chosen = await shop.Layers.ChooseLook.ChooseAsync(item, made.Value.Record.LookId, cancellation);
            if (!chosen.IsTaken)
                return answer.Fail(ExitCodes.Refused, Invariant($"{made.Value.Record.LookId} was solved but could not be chosen."), chosen.Faults);
        }

        return PanelWords.Tell(answer, made.Value);
    }

    private static Command Separate(Shared shared)
    {
        Argument<string> item = new("item") { Description = "Id of the item." };
        Option<string?> condition = new("--condition") { Description = "Print condition; the one the item would be printed in when left out." };
        Option<double> ppi = new("--ppi") { Description = "Resolution, 10 to 600 ppi.", DefaultValueFactory = _ => 150 };
        Command command = new("separate", "Makes a look from an item's pages as its press files would be made.") { item, condition, ppi };
        command.SetAction((parsed, cancellation) => parsed.GetValue(ppi) is not (>= 10 and <= 600)
            ? Task.FromResult(shared.Answer(parsed).Fail(ExitCodes.BadUsage, Invariant($"--ppi: found {parsed.GetValue(ppi)}; wanted 10 to 600."), []))
            : shared.InShopAsync(
                parsed,
                async (shop, answer) =>
                {
                    using WorkLine line = new(answer, "separate");
                    Reading<LookRecord> made = await shop.Layers.SeparateLook.SeparateAsync(
                        parsed.GetRequiredValue(item), parsed.GetValue(condition), parsed.GetValue(ppi), line, cancellation);
                    return made.IsTaken
                        ? PanelWords.Tell(answer, new(made.Value, shop.Layers.Shelf.FolderOf(made.Value.ItemId, made.Value.LookId)))
                        : answer.Fail(Environments.CodeFor(made.Faults), "No look was made; nothing of it is left.", made.Faults);
                },
                cancellation));
        return command;
    }

    private static Command List(Shared shared)
    {
        Argument<string> item = new("item") { Description = "Id of the item." };
        Command command = new("list", "Lists the looks of an item; a star stands at the one it is printed from.") { item };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            async (shop, answer) =>
            {
                string id = parsed.GetRequiredValue(item);
                ItemRecord? record = await shop.Store.ItemAsync(id, cancellation);
                if (record is null)
                    return answer.Fail(ExitCodes.Refused, Invariant($"Item {id}: found none of that id; wanted one of laydown orders."), []);
                IReadOnlyList<LookRecord> looks = shop.Layers.ListLooks.List(id);
                if (answer.AsJson)
                    answer.Json("looks", new { itemId = id, chosen = record.LookId, looks });
                else
                    answer.Table(PanelWords.Headings, looks.Select(l => PanelWords.Row(l, l.LookId == record.LookId)));
                return ExitCodes.Done;
            },
            cancellation));
        return command;
    }

    private static Command Show(Shared shared)
    {
        Argument<string> item = new("item") { Description = "Id of the item." };
        Argument<string> look = new("look") { Description = "Id of its look, such as L-1." };
        Command command = new("show", "Shows a look: how near it comes, what cannot be reached and why, where its pictures lie.") { item, look };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            (shop, answer) =>
            {
                Reading<StoredLook> found = shop.Layers.ShowLook.Show(parsed.GetRequiredValue(item), parsed.GetRequiredValue(look));
                return Task.FromResult(found.IsTaken ? PanelWords.Tell(answer, found.Value) : answer.Fail(ExitCodes.Refused, "There is no such look.", found.Faults));
            },
            cancellation));
        return command;
    }

    private static Command Choose(Shared shared)
    {
        Argument<string> item = new("item") { Description = "Id of the item." };
        Argument<string> look = new("look") { Description = "Id of its look, such as L-1; none separates its pages again." };
        Command command = new("choose", "Chooses the look an item is printed from; a run it is in is planned anew.") { item, look };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            async (shop, answer) =>
            {
                string id = parsed.GetRequiredValue(look);
                Reading<ItemRecord> chosen = await shop.Layers.ChooseLook.ChooseAsync(
                    parsed.GetRequiredValue(item), string.Equals(id, "none", StringComparison.OrdinalIgnoreCase) ? null : id, cancellation);
                if (!chosen.IsTaken)
                    return answer.Fail(ExitCodes.Refused, "Nothing was chosen.", chosen.Faults);
                if (answer.AsJson)
                    answer.Json("item-look", new { itemId = chosen.Value.Item.Id, lookId = chosen.Value.LookId, chosen.Value.State });
                else
                    answer.Line(Invariant($"{chosen.Value.Item.Id} is printed from {chosen.Value.LookId ?? "its pages"}; it is {StateWords.Of(chosen.Value.State)}."));
                return ExitCodes.Done;
            },
            cancellation));
        return command;
    }
}
