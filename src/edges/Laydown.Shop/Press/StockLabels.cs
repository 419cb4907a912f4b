using Laydown.Measures;
using Laydown.Plan.StockRoom;
using Laydown.Press.Stocks;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Shop.Press;

/// <summary>Makes labels of lots.</summary>
/// <param name="catalogue">What the shop has.</param>
/// <param name="room">The room.</param>
/// <param name="papers">Writes them.</param>
public sealed class StockLabels(Catalogue catalogue, IStockRoom room, IPressPapers papers)
{
    private const int Most = 500;

    /// <summary>A4 PDF with a label for each lot, or what is not there.</summary>
    /// <param name="lotIds">Lots; all that are not used up when none is named.</param>
    /// <param name="cancellation">Ends the reading.</param>
    /// <param name="address">Where the pages are served, for the codes; null for what the shop says.</param>
    public async Task<Reading<byte[]>> MakeAsync(IReadOnlyList<string> lotIds, CancellationToken cancellation, string? address = null)
    {
        IReadOnlyList<StockLot> lots = await room.LotsAsync(cancellation);
        List<InputFault> faults = [.. lotIds.Where(id => lots.All(l => l.Id != id)).Select(id => new InputFault("stock room", null, "lotId", id, "a lot of the room"))];
        List<StockLot> wanted = [.. lotIds.Count == 0 ? lots.Where(l => l.OnHand > 0) : lots.Where(l => lotIds.Contains(l.Id, StringComparer.Ordinal))];
        if (faults.Count == 0 && (wanted.Count == 0 || wanted.Count > Most))
            faults.Add(new("stock room", null, "lots", Invariant($"{wanted.Count} lots"), Invariant($"1 to {Most}")));
        return faults.Count > 0 ? Reading.Refused<byte[]>(faults) : Reading.Of(papers.Labels(catalogue.ShopName, [.. wanted.Select(l => Label(l, catalogue.Address.Length > 0 ? catalogue.Address : address ?? ""))]));
    }

    /// <summary>Writes labels to a file, whole or not at all.</summary>
    public static Task SaveAsync(string path, ReadOnlyMemory<byte> bytes, CancellationToken cancellation) => WholeFile.WriteAsync(path, bytes, cancellation);

    private StockLabel Label(StockLot lot, string address)
    {
        string size = lot.Kind == StockKind.Roll ? Invariant($"{lot.WidthMm:0} mm wide") : Invariant($"{lot.WidthMm:0} × {lot.LengthMm:0} mm");
        string name = catalogue.Stocks.FirstOrDefault(s => s.Id == lot.StockId)?.Name ?? lot.StockId;
        return new(lot.Id, name, size, lot.Place, lot.Since, lot.BornOf is { } run ? Invariant($"offcut of {run}") : lot.SupplierLot is { } maker ? Invariant($"lot {maker}") : null, Invariant($"{address}/stock#{lot.Id}"));
    }
}
