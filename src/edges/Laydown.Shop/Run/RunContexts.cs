using System.Security.Cryptography;
using System.Text.Json;
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

    /// <summary>SHA-256, lower-case hex, over all that goes into the files: run, press, inks, stock, condition, profile, lines, artwork and looks.</summary>
    /// <remarks>States and paths stay out: they change nothing in the files.</remarks>
    public static async Task<string> HashAsync(RunContext context, CancellationToken cancellation)
    {
        string profile = File.Exists(context.ProfilePath)
            ? Convert.ToHexStringLower(SHA256.HashData(await File.ReadAllBytesAsync(context.ProfilePath, cancellation)))
            : "";
        var inputs = new
        {
            FilesVersion,
            context.ShopName,
            context.Run,
            context.Press,
            context.Mode,
            context.InkSet,
            context.Stock,
            context.Beside,
            context.Condition,
            context.Optics,
            Profile = profile,
            context.Currency,
            Items = context.Items.Select(i => new { i.Item, i.OrderId, i.Customer, i.Stack, i.Artwork?.Sha256 }),
            Looks = context.Looks.OrderBy(l => l.Key, StringComparer.Ordinal)
                .Select(l => new { Item = l.Key, l.Value.Record.LookId, l.Value.Record.Layers, Planes = l.Value.Record.PlanesSha256 }),
        };
        return Convert.ToHexStringLower(SHA256.HashData(JsonSerializer.SerializeToUtf8Bytes(inputs, ShopJson.Compact)));
    }

    private static bool Is(string one, string other) => string.Equals(one, other, StringComparison.Ordinal);
}
