using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Press.Machines;
using Laydown.Press.Stocks;

namespace Laydown.Plan.Runs;

/// <summary>What the operator has to know of a run that is printed on both faces of boards or blanks: how it is turned, which edge lies against which lay.</summary>
public static class FaceWords
{
    /// <summary>Whether a run is printed on both faces of sheets that are turned over in between.</summary>
    public static bool Applies(Run run)
    {
        ArgumentNullException.ThrowIfNull(run);
        return run.Belt.FrontLay != "none" && run.Stack.Layers.Select(l => l.Face).Distinct().Skip(1).Any();
    }

    /// <summary>How the sheets of a run are turned: sideways where nobody said.</summary>
    public static SheetTurn TurnOf(Run run)
    {
        ArgumentNullException.ThrowIfNull(run);
        return run.Sheets.Select(s => s.Faces).OfType<SheetFaces>().FirstOrDefault()?.Turn ?? SheetTurn.Sideways;
    }

    /// <summary>Rows for the set-up sheet, name and sentence each; empty where one face is printed.</summary>
    /// <param name="run">The run.</param>
    /// <param name="press">Its press.</param>
    /// <param name="stock">Its stock.</param>
    /// <param name="leastBleedMm">Narrowest bleed of its items, mm; null where it is not at hand.</param>
    public static IReadOnlyList<(string Name, string Words)> Of(Run run, PressDescription press, Stock stock, double? leastBleedMm)
    {
        if (!Applies(run))
            return [];
        ArgumentNullException.ThrowIfNull(press);
        ArgumentNullException.ThrowIfNull(stock);
        FaceRegister register = FaceRegisters.Of(press, stock, TurnOf(run), run.Belt.Turned);
        return [("Turn", Turn(register)), ("Lays", Lays(run, press, stock, register)), ("Faces apart", Apart(run, register, leastBleedMm)), ("Files", Files(run))];
    }

    private static string Turn(FaceRegister register) => register.SideEdgeChanges
        ? "Turn each sheet sideways, as it lies on the belt: edge b stays at the front lay, edge a goes from one side to the other."
        : "Turn each sheet front to back, as it lies on the belt: edge a stays at its side, edge b goes away from the front lay.";

    private static string Lays(Run run, PressDescription press, Stock stock, FaceRegister register)
    {
        double tolerance = stock.SizeToleranceMm ?? FaceRegisters.SizeToleranceMm;
        Lane lane = run.Belt.Lanes[0];
        string first = "Mark edge a, at the side lay on the first face, and edge b, at the front lay. Second face: ";
        return first + (register, press.FarSideLay) switch
        {
            ({ SideEdgeChanges: false }, _) => Invariant($"edge a at the side lay again; another edge lies at the front lay, so what a sheet differs from its size (± {tolerance:0.##} mm) parts front and back along the feed."),
            (_, true) => Invariant($"edge b at the front lay again, and edge a against a side lay at the far side, {lane.StartMm + lane.WidthMm:0.#} mm from the belt's origin: never the other edge, or what a sheet differs from its size (± {tolerance:0.##} mm) parts front and back."),
            _ => Invariant($"edge b at the front lay again; another edge lies at the side lay, so what a sheet differs from its size (± {tolerance:0.##} mm) parts front and back across the belt. A stop for edge a at {lane.StartMm + lane.WidthMm:0.#} mm would keep that out."),
        };
    }

    private static string Apart(Run run, FaceRegister register, double? leastBleedMm)
    {
        string covered = leastBleedMm is not { } bleed ? "" : bleed + 1e-9 >= register.MostMm
            ? Invariant($"; the bleed of {bleed:0.##} mm covers it")
            : Invariant($"; more than the bleed of {bleed:0.##} mm: bare edges may show, measure the first sheets");
        Figure? growth = run.SetUp.Figures.FirstOrDefault(f => f.Name == SetUps.GrowthName);
        string warm = growth is { Value: > 0.005 } ? Invariant($" Let the sheets cool before the second face: turned warm, up to {growth.Value:0.##} mm more.") : "";
        return Invariant($"Up to {register.AcrossMm:0.##} mm across the belt and {register.AlongMm:0.##} mm along the feed{covered}.{warm}");
    }

    private static string Sheets(Run run) => run.SheetCount == 1 ? "the sheet" : Invariant($"all {run.SheetCount} sheets");

    private static string Files(Run run)
    {
        string Numbers(bool second) => string.Join(", ", run.Stack.Layers.Index().Where(l => (l.Item.Face != run.Stack.Layers[0].Face) == second).Select(l => l.Index + 1));
        return run.Sheets.All(s => s.Faces?.OneFile == true)
            ? Invariant($"One file for both faces, fronts and backs on one sheet: print {Sheets(run)} with layer {Numbers(false)}, turn {(run.SheetCount == 1 ? "it" : "them")}, print the same file again (layer {Numbers(true)} is the same file under another name). Each place gives a whole piece; of labels and codes those of the first face count.")
            : Invariant($"Layer {Numbers(false)} on the first face of {Sheets(run)}, then layer {Numbers(true)} on the second, which is drawn as the turned sheet lies.");
    }
}
