using Laydown.Measures;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Press.Stocks;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Layers;

/// <summary>The one way from a stored look to the model of light.</summary>
/// <param name="catalogue">What the shop has.</param>
public sealed class LookLights(Catalogue catalogue)
{
    /// <summary>Sheet, layers and scenes of a look, or a fault for each id that the shop no longer knows.</summary>
    public Reading<LookOptics> Of(LookRecord record)
    {
        Stock? stock = catalogue.Stocks.FirstOrDefault(s => Is(s.Id, record.StockId));
        InkSet? inks = catalogue.InkSets.FirstOrDefault(s => Is(s.Id, record.InkSetId));
        PrintCondition? condition = catalogue.Conditions.FirstOrDefault(c => Is(c.Id, record.ConditionId));
        List<InputFault> faults = [.. new (string What, string Id, object? Found)[]
        {
            ("stock", record.StockId, stock), ("ink set", record.InkSetId, inks), ("print condition", record.ConditionId, condition),
        }.Where(n => n.Found is null).Select(n => new InputFault(
            Invariant($"look {record.LookId}"), null, n.What, Invariant($"'{n.Id}', which the shop does not know"), Invariant($"the {n.What} it was made for")))];
        return faults.Count > 0 || stock is null || inks is null || condition is null
            ? Reading.Refused<LookOptics>(faults)
            : Of(record.Layers, stock, inks, catalogue.OpticsOf(condition), record.ViewedFrom, record.Day, record.Night);
    }

    /// <summary>The same from the parts.</summary>
    internal static Reading<LookOptics> Of(
        IReadOnlyList<LookedLayer> layers, Stock stock, InkSet inks, InkOptics? optics, Laydown.Press.Stacks.SheetFace viewedFrom, LookScene day, LookScene night) =>
        StackLights.SheetOf(stock).Then(sheet => Reading.Of(new LookOptics(
            sheet,
            [.. layers.Select(l => new Laydown.Optics.Looks.LookLayer(
                StackLights.FaceOf(l.Face), [.. l.Inks.Select(i => StackLights.InkOf(i.Role, inks, optics))]))],
            StackLights.FaceOf(viewedFrom),
            day.Scene(),
            night.Scene(),
            IsGeneric(layers, inks, optics))));

    /// <summary>Whether an ink of the layers rests on no reading of its own; clear changes no colour and is not asked.</summary>
    internal static bool IsGeneric(IReadOnlyList<LookedLayer> layers, InkSet inks, InkOptics? optics) =>
        layers.SelectMany(l => l.Inks).Select(i => i.Role).Distinct().Where(r => r != InkRole.Clear)
            .Any(r => StackLights.LightOf(r, inks, optics).IsGeneric);

    private static bool Is(string one, string other) => string.Equals(one, other, StringComparison.Ordinal);
}
