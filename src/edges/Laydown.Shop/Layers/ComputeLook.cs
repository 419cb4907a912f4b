using Laydown.Colour.Spectra;
using Laydown.Measures;
using Laydown.Optics.Looks;
using Laydown.Press.Inks;
using Laydown.Press.Stocks;
using Laydown.Shop.Colour;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Layers;

/// <summary>Computes what is seen of mixtures on a stack: spectra, colours by day and with the lamp on, luminance, opacity, transmission.</summary>
/// <param name="catalogue">What the shop has.</param>
/// <param name="store">Its items.</param>
/// <param name="files">Reads the files.</param>
public sealed class ComputeLook(Catalogue catalogue, IShopStore store, IColourFiles files)
{
    /// <summary>The looks of the mixtures in a CSV file: a column for each ink of each layer, percent, such as <c>1 Cyan</c>.</summary>
    /// <param name="path">Full path of the file.</param>
    /// <param name="itemId">The item whose stack it is; null for <paramref name="asked"/>.</param>
    /// <param name="asked">A stack without an order; null for the item's.</param>
    /// <param name="day">Light by day; null for the one proofs are drawn in.</param>
    /// <param name="night">Light with the lamp on; null for the one proofs are drawn in.</param>
    /// <param name="cancellation">Looked at before each row.</param>
    public async Task<Reading<SpotLooks>> ComputeAsync(
        string path, string? itemId, AskedStack? asked, LookScene? day, LookScene? night, CancellationToken cancellation)
    {
        Reading<Stack> stack = asked is not null ? Of(asked) : await OfItemAsync(itemId ?? "", cancellation);
        return stack.Then(s => LightsOf(s, day, night).Then(lights => Compute(s, lights, path, cancellation)));
    }

    private static Reading<LookOptics> LightsOf(Stack stack, LookScene? day, LookScene? night) => StackLights.SheetOf(stack.Stock).Then(sheet =>
    {
        Scene byDay = (day ?? LookScene.Of(stack.Day)).Scene(), lit = (night ?? LookScene.Of(stack.Night)).Scene();
        bool generic = stack.Layers.SelectMany(l => l.Inks).Any(r => r != InkRole.Clear && StackLights.LightOf(r, stack.Inks, stack.Optics).IsGeneric);
        return Reading.Of(new LookOptics(
            sheet,
            [.. stack.Layers.Select(l => new LookLayer(
                StackLights.FaceOf(l.Face), [.. l.Inks.Select(r => StackLights.InkOf(r, stack.Inks, stack.Optics, l.StrengthPercent))]))],
            StackLights.FaceOf(stack.ViewedFrom), byDay, lit, generic));
    });

    private Reading<SpotLooks> Compute(Stack stack, LookOptics lights, string path, CancellationToken cancellation)
    {
        string[] columns = [.. stack.Layers.SelectMany((l, i) => l.Inks.Select(r => Invariant($"{i + 1} {InkRoleNames.Of(r)}")))];
        return files.Numbers(path, columns).Then(table =>
        {
            if (Fault(table) is { } fault)
                return Reading.Refused<SpotLooks>(fault);
            (StackLook day, StackLook night) = (lights.Day(), lights.Night());
            StackOptics bands = lights.Bands();
            StackNumbers numbers = new(lights.Sheet, lights.Layers, lights.NightScene, lights.ViewedFrom);
            SpotLook[] spots = new SpotLook[table.Rows.Count];
            Parallel.For(0, spots.Length, new ParallelOptions { CancellationToken = cancellation }, i => spots[i] = Spot(table.Rows[i], day, night, bands, numbers));
            return Reading.Of(new SpotLooks(
                columns, LookScene.Of(lights.DayScene), LookScene.Of(lights.NightScene), lights.IsGeneric,
                StackLights.Missing(stack.Layers.SelectMany(l => l.Inks), stack.Inks, stack.Optics), spots));
        });
    }

    private static SpotLook Spot(NumberRow row, StackLook day, StackLook night, StackOptics bands, StackNumbers numbers)
    {
        double[] coverages = [.. row.Values.Select(v => v / 100)], reflectance = new double[Bands.Count], transmittance = new double[Bands.Count];
        bands.Solve(coverages, reflectance, transmittance);
        SeenColour byDay = day.At(coverages), lit = night.At(coverages);
        return new(
            row.Line, row.Name, coverages, reflectance, transmittance, byDay.CdPerM2, byDay.Lab, lit.CdPerM2, lit.Lab, numbers.At(coverages));
    }

    private static InputFault? Fault(NumberTable table)
    {
        foreach (NumberRow row in table.Rows)
        {
            for (int i = 0; i < row.Values.Count; i++)
            {
                if (!(row.Values[i] is >= 0 and <= 100))
                    return new(table.File, null, Invariant($"line {row.Line}, {table.Columns[i]}"), Invariant($"{row.Values[i]} %"), "0 % to 100 %");
            }
        }

        return null;
    }

    private async Task<Reading<Stack>> OfItemAsync(string itemId, CancellationToken cancellation)
    {
        ItemRecord? item = await store.ItemAsync(itemId, cancellation);
        if (item is null)
            return Refused(Invariant($"item {itemId}"), "item", Invariant($"no item '{itemId}'"), "an item of this shop");
        return ItemPress.Of(item, null, catalogue).Then(press =>
        {
            (Scene day, Scene night) = press.Scenes();
            return Reading.Of(new Stack(
                press.Stock, press.InkSet, catalogue.OpticsOf(press.Condition), Laydown.Press.Stacks.SheetFace.First, day, night,
                [.. StackPlanes.Of(press.Stack, press.Condition, press.InkSet, withLightInks: true).Select(l => new AskedLayer(l.Face, [.. l.Inks.Select(i => i.Role)], 100))]));
        });
    }

    private Reading<Stack> Of(AskedStack asked)
    {
        Stock? stock = catalogue.Stocks.FirstOrDefault(s => Is(s.Id, asked.StockId));
        InkSet? inks = catalogue.InkSets.FirstOrDefault(s => Is(s.Id, asked.InkSetId));
        if (stock is null)
            return Refused("stack", "stock", Invariant($"'{asked.StockId}'"), Invariant($"one of {string.Join(", ", catalogue.Stocks.Select(s => s.Id))}"));
        if (inks is null)
            return Refused("stack", "ink set", Invariant($"'{asked.InkSetId}'"), Invariant($"one of {string.Join(", ", catalogue.InkSets.Select(s => s.Id))}"));
        foreach ((int i, AskedLayer layer) in asked.Layers.Index())
        {
            string field = Invariant($"layer {i + 1}");
            InkRole[] lacking = [.. layer.Inks.Where(r => inks.Find(r) is null)];
            if (lacking.Length > 0)
                return Refused("stack", field, string.Join(", ", lacking.Select(InkRoleNames.Of)), Invariant($"inks of {inks.Name}: {string.Join(", ", inks.Inks.Select(k => k.Name))}"));
            if (layer.Inks.Contains(InkRole.White) && layer.Inks.Any(r => r != InkRole.White))
                return Refused("stack", field, "white and colour in one layer", "a layer of its own for white");
            if (!(layer.StrengthPercent is > 0 and <= 200))
                return Refused("stack", field, Invariant($"strength {layer.StrengthPercent} %"), "over 0 % to 200 %");
        }

        InkOptics? optics = catalogue.Optics.FirstOrDefault(o => Is(o.Id, inks.OpticsId ?? ""));
        return Reading.Of(new Stack(stock, inks, optics, asked.ViewedFrom, Scene.Day(), Scene.Lit(), asked.Layers));
    }

    private static bool Is(string one, string other) => string.Equals(one, other, StringComparison.Ordinal);

    private static Reading<Stack> Refused(string file, string field, string found, string wanted) =>
        Reading.Refused<Stack>(new InputFault(file, null, field, found, wanted));

    private sealed record Stack(
        Stock Stock, InkSet Inks, InkOptics? Optics, Laydown.Press.Stacks.SheetFace ViewedFrom, Scene Day, Scene Night, IReadOnlyList<AskedLayer> Layers);
}
