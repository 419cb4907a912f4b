using Laydown.Layout.Marks;
using Laydown.Layout.Panels;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Plan.Runs;
using Laydown.Press.Stocks;

namespace Laydown.Shop.Layout;

/// <summary>The items of a run as pieces to be laid out: in panels where they are larger than the stock, each with the room its marks and folds need.</summary>
internal sealed class RunPieces
{
    private readonly Dictionary<string, EdgeRoom> rooms;
    private readonly Dictionary<string, double> seamBleeds = new(StringComparer.Ordinal);
    private readonly HashSet<string> onSide = new(StringComparer.Ordinal);

    private RunPieces(IReadOnlyList<Item> items)
    {
        rooms = items.ToDictionary(i => i.Id, PieceRoom.Of, StringComparer.Ordinal);
        foreach (Item item in items.Where(i => i.Panels?.SeamBleedMm > 0))
            seamBleeds[item.Id] = item.Panels!.SeamBleedMm;
    }

    /// <summary>The pieces, with their room.</summary>
    public IReadOnlyList<Piece> Pieces { get; private set; } = [];

    /// <summary>Items that cannot be parted, as pieces without a place.</summary>
    public IReadOnlyList<UnplacedPiece> Unparted { get; private set; } = [];

    /// <summary>The pieces of a run.</summary>
    /// <param name="run">The run.</param>
    /// <param name="items">Those of its items that are wanted.</param>
    /// <param name="most">Largest piece that the stock takes, mm; larger ones are parted where <paramref name="parts"/> allows.</param>
    /// <param name="parts">Whether items are parted at all.</param>
    public static RunPieces Of(FormedRun run, IReadOnlyList<FormedItem> items, SizeMm most, Func<Item, bool> parts)
    {
        RunPieces all = new([.. items.Select(i => i.Ready.Item)]);
        List<Piece> pieces = [];
        List<UnplacedPiece> unparted = [];
        foreach (FormedItem formed in items)
        {
            Item item = formed.Ready.Item;
            Piece whole = WholeOf(item, run.Stock);
            EdgeRoom room = all.rooms[item.Id];
            if (Fits(PieceRoom.Grown(whole, room), most) || !parts(item))
            {
                pieces.Add(PieceRoom.Grown(whole, room));
                continue;
            }

            Reading<IReadOnlyList<Piece>> parted = all.Parted(formed.Ready, whole, room, most);
            pieces.AddRange(parted.Match(p => p, _ => []));
            unparted.AddRange(parted.Faults.Select(f => new UnplacedPiece(item.Id, item.Quantity, f.Found, f.Wanted)));
        }

        (all.Pieces, all.Unparted) = (pieces, unparted);
        return all;
    }

    /// <summary>An item as one piece, without its room.</summary>
    public static Piece WholeOf(Item item, Stock stock) => new(
        item.Id, item.Printed, item.BleedMm, item.Quantity, MayTurn: item.UpAlongGrain is null || stock.Grain == GrainDirection.None)
    {
        KeepWith = item.KeepWith,
        Due = item.Due,
        MostOver = item.OversAllowed,
    };

    /// <summary>A layout of pieces with their room, as a layout of what is printed; panels in order.</summary>
    /// <param name="result">The layout.</param>
    /// <param name="marginMm">Unprintable margin of the sheets, mm.</param>
    public LayoutResult Printed(LayoutResult result, double marginMm) => new(
        PanelOrder.InOrder([.. result.Sheets.Select(s => s with { EdgeMarginMm = marginMm, Placements = [.. s.Placements.Select(Printed)] })]),
        [.. result.Unplaced, .. Unparted]);

    private Reading<IReadOnlyList<Piece>> Parted(ReadyItem ready, Piece whole, EdgeRoom room, SizeMm most)
    {
        SizeMm inner = new(Math.Max(0, most.WidthMm - room.LeftMm - room.RightMm), Math.Max(0, most.HeightMm - room.BottomMm - room.TopMm));
        PanelRequest request = new(
            ready.Item.Id, whole.Printed, whole.BleedMm, inner, whole.MayTurn, ready.Item.Panels ?? new(), ready.SeamKeepOuts);
        return Panelling.Solve(request).Then(plan => Reading.Of<IReadOnlyList<Piece>>([.. PanelSplit.Split(whole, plan).Select(p => Laid(p with { KeepWith = whole.KeepWith, Due = whole.Due }, room))]));
    }

    // All panels of a graphic lie the same way: one that lies on its side is handed on as it lies, so that no other way is tried.
    private Piece Laid(Piece panel, EdgeRoom room)
    {
        Piece grown = PieceRoom.Grown(panel, room);
        if (panel.Part is null || !panel.MayTurn)
            return grown;
        onSide.Add(panel.Id);
        return grown with { Printed = grown.Printed.Turned(), MayTurn = false };
    }

    private Placement Printed(Placement placement)
    {
        // Panels that butt show some of their neighbours beyond the seam; what of it is trimmed goes with the placement.
        if (placement.Part is not null && seamBleeds.GetValueOrDefault(SheetLayouts.ItemIdOf(placement.PieceId)) is > 0 and var seam)
            placement = placement with { SeamBleedMm = seam };
        Placement lying = onSide.Contains(placement.PieceId) ? placement with { Turned = true, AngleDegrees = 90 } : placement;
        return PieceRoom.Shrunk(lying, rooms[SheetLayouts.ItemIdOf(placement.PieceId)]);
    }

    private static bool Fits(Piece piece, SizeMm most) => piece.Printed.FitsIn(most) || (piece.MayTurn && piece.Printed.Turned().FitsIn(most));
}
