using Laydown.Layout.Lanes;
using Laydown.Layout.Repeats;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Plan.Runs;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;

namespace Laydown.Shop.Layout;

/// <summary>Boards of a run that are printed on both faces: how they are turned, and how far front and back may lie apart.</summary>
internal sealed class FacedSheets
{
    private readonly FaceRegister register;

    private FacedSheets(FaceRegister register) => this.register = register;

    /// <summary>How the boards of a run are turned; null where one face is printed, on rolls, and where no item says.</summary>
    /// <param name="run">The run; its items ask for the same turn.</param>
    /// <param name="frame">The board as it is drawn, mm.</param>
    /// <param name="belt">The belt it lies on.</param>
    public static FacedSheets? Of(FormedRun run, SizeMm frame, Belt belt)
    {
        if (!TwoFaces(run.Stack) || run.Stock.Kind != StockKind.Board || run.Items.Select(i => i.Ready.Item.Turn).OfType<TurnWish>().FirstOrDefault() is not { } wish)
            return null;
        bool onItsSide = BeltPlaces.ForBoard(run.Stock.Id, frame, 1, belt).Match(b => b.Turned, _ => false);
        return new(FaceRegisters.Of(run.Press, run.Stock, wish.About, frame, onItsSide));
    }

    /// <summary>Whether a stack prints on both faces.</summary>
    public static bool TwoFaces(LayerStack stack) => stack.Layers.Select(l => l.Face).Distinct().Skip(1).Any();

    /// <summary>The faces of an item's sheets.</summary>
    public SheetFaces FacesOf(Item item) => new(register.Turn, item.Turn?.Way == BackWay.WorkAndTurn, MostMm(item));

    /// <summary>The layouts, each told how it is turned.</summary>
    public LayoutResult Told(LayoutResult result, IReadOnlyList<Item> items)
    {
        double most = items.Max(MostMm);
        return result with { Sheets = [.. result.Sheets.Select(s => s.Faces is null ? s with { Faces = new(register.Turn, false, most) } : s)] };
    }

    /// <summary>Why an item cannot be printed so, as a piece without a place; null where it can.</summary>
    /// <param name="item">The item.</param>
    /// <param name="stack">Its layers.</param>
    public UnplacedPiece? Refused(Item item, LayerStack stack)
    {
        if (item.Turn is not { } wish)
            return null;
        if (wish.RegisterMm is { } most && register.MostMm > most + 1e-9)
        {
            return new(item.Id, item.Quantity, Invariant($"faces that may lie {register.MostMm:0.##} mm apart: {string.Join("; ", register.Figures.Select(f => f.Because))}"),
                Invariant($"at most {most:0.##} mm: another edge to turn about, a side lay at the far side, or a wider registerMm"));
        }

        if (item.BleedMm < MostMm(item))
            return new(item.Id, item.Quantity, Invariant($"bleed {item.BleedMm:0.##} mm"), Invariant($"at least {MostMm(item):0.##} mm, what the two faces may lie apart"));
        return wish.Way == BackWay.WorkAndTurn && !AlikeOnBothFaces(stack)
            ? new(item.Id, item.Quantity, "other layers on the second face than on the first", "the same layers on both faces, or sheetwise: work-and-turn prints one file twice")
            : null;
    }

    /// <summary>Why an item that asks for a turn cannot be printed on sheets that are never turned; null where it does not.</summary>
    public static UnplacedPiece? OneFaced(Item item) => item.Turn is null ? null : new(
        item.Id, item.Quantity, "turn, for layers that all lie on one face of the sheet, or on a roll", "a board with layers on both faces (build: seenFrom bothSides, printed both), or no turn");

    /// <summary>Whether both faces carry the same layers in the same order, so that one file can serve both.</summary>
    public static bool AlikeOnBothFaces(LayerStack stack)
    {
        static IEnumerable<(InkGroup, WhiteSource?, string?, double, double, bool, bool)> Of(IEnumerable<Layer> face) =>
            face.Select(l => (l.Group, l.Source, l.SeparationName, l.StrengthPercent, l.ChokeMm, l.Mirrored && !l.IsFlood, l.Negative));
        return Of(stack.On(SheetFace.First)).SequenceEqual(Of(stack.On(SheetFace.Second)));
    }

    private double MostMm(Item item) => item.Turn?.RegisterMm ?? register.MostMm;
}
