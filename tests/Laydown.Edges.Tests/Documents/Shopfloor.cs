using Laydown.Demo.Descriptions;
using Laydown.Intake.Orders;
using Laydown.Layout.Boards;
using Laydown.Layout.Lanes;
using Laydown.Layout.Rolls;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Plan.Runs;
using Laydown.Press.Inks;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Edges.Tests.Documents;

/// <summary>Runs planned from the demo catalogue through the same steps as the shop's day, without artwork: laydown is given.</summary>
internal sealed class Shopfloor : IDisposable
{
    public const string Board = "aluminium-composite-3", Blank = "foam-blank", Clear = "acrylic-clear-5", Roll = "banner-roll";
    private readonly string folder = Directory.CreateTempSubdirectory("laydown-documents-").FullName;

    public Shopfloor()
    {
        DemoCatalogue.Write(folder, CancellationToken.None);
        Directory.CreateDirectory(Path.Combine(folder, "profiles"));
        foreach (string profile in DemoCatalogue.Profiles)
            File.WriteAllBytes(Path.Combine(folder, "profiles", profile), new byte[128]);
        Catalogue = new CatalogueReader().Read(folder).Value;
    }

    public Catalogue Catalogue { get; }

    public string Folder => folder;

    public RunContext Plan(string stockId, double width = 420, double height = 300, int quantity = 12, BuildWish? build = null, double distance = 1.5, string title = "Trail sign")
    {
        Item[] items =
        [
            Item("TW-2001-1", title, stockId, width, height, quantity, build, distance),
            Item("TW-2002-3", "Warden's notice, long name that has to be broken somewhere", stockId, width, height, Math.Max(1, quantity / 3), build, distance),
        ];
        return Plan(stockId == Blank ? items[..1] : items);
    }

    public RunContext Plan(params Item[] items)
    {
        FormedRuns formed = RunFormer.Form([.. items.Select(i => new ReadyItem(i, i.Id[..7], 9, 0.5))],
            new PressRoom(Catalogue.Presses, Catalogue.InkSets, Catalogue.Stocks, Catalogue.Conditions));
        FormedRun group = formed.Runs[0];
        (IReadOnlyList<SheetLayout> sheets, BeltPlace belt) = LayOut(group);
        RunRequest request = new("R-20261126-03", group.Press, group.InkSet, group.Stock, group.Condition, Catalogue.Rates, group.Stack,
            [.. group.Items.Select(i => new PlannedItem(i.Ready.Item, i.Ready.OrderId, Ink(i.Stack, group.InkSet), 9, 0.5, null))], sheets, belt);
        Laydown.Plan.Runs.Run run = RunPlanner.Plan(request).Value;
        return new(Catalogue.ShopName, run, group.Press, group.Press.FindMode(run.Mode.ModeId)!, group.InkSet, group.Stock, group.Condition, "none.icc", Catalogue.Rates.Currency, []);
    }

    public static Item Item(string id, string title, string stockId, double width, double height, int quantity, BuildWish? build = null, double distance = 1.5) =>
        new(id, title, "a.pdf", width, height, stockId == Blank ? 0 : 3, quantity, stockId, build ?? new(false, false, false, null, null, 0, 0, false),
            [new(FinishingKind.CutSquare, 1), new(FinishingKind.Pack, 1)], new DateOnly(2026, 12, 3), distance, 1, null);

    public void Dispose() => Directory.Delete(folder, recursive: true);

    private static (IReadOnlyList<SheetLayout> Sheets, BeltPlace Belt) LayOut(FormedRun run)
    {
        Piece[] pieces = [.. run.Items.Select(i => new Piece(i.Ready.Item.Id, i.Ready.Item.Printed, i.Ready.Item.BleedMm, i.Ready.Item.Quantity, true))];
        Belt belt = new(run.Press.BeltWidthMm, run.Press.MaxSheetLengthMm, [.. run.Press.Zones.Select(z => new BeltZone(z.Id, z.StartMm, z.WidthMm))], run.Press.Lays, run.Press.MaxLanes);
        double margin = run.Press.EdgeMarginMm;
        LayoutResult laid = run.Stock.Kind switch
        {
            StockKind.Blank => BlankLayout.Solve(pieces, run.Stock.Size, 1),
            StockKind.Roll => RollLayout.Solve(pieces, new(run.Stock.WidthMm, run.Stock.LengthMm, margin, 5, 150, 150, CutProcess.Guillotine), CancellationToken.None),
            _ => BoardLayout.Solve(pieces, new(run.Stock.Size, margin, 5, CutProcess.Guillotine), CancellationToken.None),
        };
        Reading<BeltPlace> place = run.Stock.Kind switch
        {
            StockKind.Blank => LanePlan.Solve(run.Stock.Id, run.Stock.Size, laid.SheetCount, true, belt),
            StockKind.Roll => BeltPlaces.ForRoll(run.Stock.Id, run.Stock.WidthMm, laid.Sheets[0].Sheet.HeightMm, run.Press.Rolls[0].StartMm, belt),
            _ => BeltPlaces.ForBoard(run.Stock.Id, laid.Sheets[0].Sheet, laid.SheetCount, belt),
        };
        return (laid.Sheets, place.Value);
    }

    private static LayerCoverage[] Ink(LayerStack stack, InkSet inks) => [.. stack.Layers.SelectMany((layer, i) => layer.Group switch
    {
        InkGroup.White => new[] { new LayerCoverage(i, InkRole.White, 1, 1) },
        InkGroup.Clear => [new LayerCoverage(i, InkRole.Clear, 1, 1)],
        _ => inks.Inks.Where(k => k.Role < InkRole.White).Select(k => new LayerCoverage(i, k.Role, 0.11, 2.6)),
    })];
}
