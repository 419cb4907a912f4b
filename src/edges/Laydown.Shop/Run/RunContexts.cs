using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Laydown.Measures;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Press.Machines;
using Laydown.Press.Stocks;
using Laydown.Shop.Layers;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Run;

/// <summary>Gathers what a run refers to, and the content hash of all of it.</summary>
public static class RunContexts
{
    /// <summary>Raised when the same inputs must give other files than before, so that runs are made again.</summary>
    private const int FilesVersion = 4;

    /// <summary>The run with everything it names, or a fault for each name that leads nowhere.</summary>
    /// <param name="run">The run.</param>
    /// <param name="catalogue">What the shop has.</param>
    /// <param name="items">Items of the shop.</param>
    /// <param name="shelf">Looks of the shop; null where no item is printed from one.</param>
    public static Reading<RunContext> Gather(
        Laydown.Plan.Runs.Run run, Catalogue catalogue, IReadOnlyList<ItemRecord> items, LookShelf? shelf = null)
    {
        List<InputFault> faults = [];
        PressDescription? press = Need(catalogue.Presses.FirstOrDefault(p => Is(p.Id, run.PressId)), "press", run.PressId);
        Mode? mode = Need(press?.FindMode(run.Mode.ModeId), "mode", run.Mode.ModeId);
        PrintCondition? condition = Need(catalogue.Conditions.FirstOrDefault(c => Is(c.Id, run.ConditionId)), "condition", run.ConditionId);
        string inkSetId = condition?.InkSetId ?? "";
        InkSet? inks = Need(catalogue.InkSets.FirstOrDefault(s => Is(s.Id, inkSetId)), "ink set", inkSetId);
        Stock? stock = Need(catalogue.Stocks.FirstOrDefault(s => Is(s.Id, run.StockId)), "stock", run.StockId);
        IReadOnlyList<Stock> beside = [.. (run.BesideStockIds ?? []).Select(id => Need(catalogue.Stocks.FirstOrDefault(s => Is(s.Id, id)), "stock", id)).OfType<Stock>()];
        List<ItemRecord> members = [.. run.Items
            .Select(r => Need(items.FirstOrDefault(i => Is(i.Item.Id, r.ItemId) && Is(i.RunId ?? run.Id, run.Id)), "item", r.ItemId))
            .OfType<ItemRecord>()];
        Dictionary<string, StoredLook> looks = [];
        foreach (ItemRecord item in members.Where(i => i.LookId is not null))
        {
            Reading<StoredLook> look = ChosenLook.Of(item, shelf);
            faults.AddRange(look.Faults);
            if (look.IsTaken)
                looks[item.Item.Id] = look.Value;
        }

        if (faults.Count > 0 || press is null || mode is null || condition is null || inks is null || stock is null)
            return Reading.Refused<RunContext>(faults);

        return Reading.Of(new RunContext(
            catalogue.ShopName, run, press, mode, inks, stock, condition, ProfilePath(catalogue, condition), catalogue.Rates.Currency, members,
            catalogue.OpticsOf(condition))
        { Looks = looks, Beside = beside, Address = catalogue.Address });

        T? Need<T>(T? found, string what, string id)
            where T : class
        {
            if (found is null)
                faults.Add(new(Invariant($"run {run.Id}"), null, what, Invariant($"no {what} '{id}' in it"), "the shop as it was when the run was planned"));
            return found;
        }
    }

    /// <summary>Full path of the profile of a print condition.</summary>
    public static string ProfilePath(Catalogue catalogue, PrintCondition condition) =>
        Path.Combine(catalogue.Folder, "profiles", Path.GetFileName(condition.Profile));

    /// <summary>SHA-256, lower-case hex, over all that goes into the files: the run and its inputs as <see cref="RunInputs"/> tells them.</summary>
    /// <remarks>
    /// States and paths stay out, and so does what the shop has left of a stock or an ink and what either costs: they change nothing in the files. A field
    /// that says nothing counts as one that is not there, so that a program that knows one more field finds the same hash.
    /// </remarks>
    public static async Task<string> HashAsync(RunContext context, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(context);
        JsonObject all = new()
        {
            ["filesVersion"] = FilesVersion,
            ["run"] = JsonSerializer.SerializeToNode(context.Run, ShopJson.Compact),
            ["inputs"] = await RunInputs.OfAsync(context, cancellation),
        };
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(RunInputs.WithoutNothing(all).ToJsonString(ShopJson.Compact))));
    }

    private static bool Is(string one, string other) => string.Equals(one, other, StringComparison.Ordinal);
}
