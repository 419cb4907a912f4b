using Laydown.Cli.Check;
using Laydown.Intake.Artwork;
using Laydown.Intake.Colour;
using Laydown.Intake.Layers;
using Laydown.Intake.Layout;
using Laydown.Intake.Orders;
using Laydown.Intake.Press;
using Laydown.Intake.Run;
using Laydown.Measures;
using Laydown.Output.Charts;
using Laydown.Output.Colour;
using Laydown.Output.Documents;
using Laydown.Output.Layers;
using Laydown.Output.Layout;
using Laydown.Output.PressFiles;
using Laydown.Output.Pyramids;
using Laydown.Shop;
using Laydown.Shop.Artwork;
using Laydown.Shop.Check;
using Laydown.Shop.Colour;
using Laydown.Shop.Layers;
using Laydown.Shop.Layout;
using Laydown.Shop.Log;
using Laydown.Shop.Orders;
using Laydown.Shop.Press;
using Laydown.Shop.Proof;
using Laydown.Shop.Run;
using Laydown.Shop.Week;
using Laydown.Intake.Week;
using Laydown.Store;

namespace Laydown.Cli;

/// <summary>The one place where ports meet what stands behind them.</summary>
public static class Wiring
{
    /// <summary>Opens the shop in a folder: reads its catalogue, opens its store, puts everything together.</summary>
    /// <param name="folder">Folder of the shop.</param>
    /// <param name="clock">Tells the day.</param>
    /// <param name="cancellation">Stops opening.</param>
    /// <returns>The shop, or why it cannot be opened, each fault with file and field.</returns>
    public static async Task<Reading<ShopServices>> OpenAsync(string folder, TimeProvider clock, CancellationToken cancellation)
    {
        ShopFolder place = new(Path.GetFullPath(folder));
        if (!File.Exists(Path.Combine(place.Catalogue, "shop.json")))
        {
            return Reading.Refused<ShopServices>(new InputFault(
                "catalogue/shop.json", null, "file", "no such file", "a shop's folder; laydown demo writes one to look at"));
        }

        Reading<Catalogue> catalogue = new CatalogueReader().Read(place.Catalogue);
        if (!catalogue.IsTaken)
            return Reading.Refused<ShopServices>(catalogue.Faults);

        SqliteShopStore store = new(place.StoreFile);
        await store.OpenAsync(cancellation);
        ShelvedStocks shelf = new(catalogue.Value.Stocks);
        SqliteStockRoom room = new(place.StoreFile);
        shelf.Follow(await room.PointsAsync(cancellation));
        shelf.Follow(await room.LotsAsync(cancellation));
        return Reading.Of(Together(place, catalogue.Value with { Stocks = shelf }, store, clock));
    }

    /// <summary>Measures customers' files without a shop.</summary>
    /// <param name="scratchFolder">Folder for temporary files.</param>
    public static IArtworkReader ArtworkReader(string scratchFolder) => new ArtworkReader(new IntakeLimits(scratchFolder));

    /// <summary>Measures file after file for another process of this program.</summary>
    /// <param name="questions">Ends when there are no more.</param>
    /// <param name="answers">Takes the answers.</param>
    public static Task MeasureFilesAsync(TextReader questions, Stream answers) => MeasuringHost.RunAsync(questions, answers);

    /// <summary>Reads pairs of pictures without a shop.</summary>
    /// <param name="scratchFolder">Folder for temporary files.</param>
    public static IPairPictures PairPictures(string scratchFolder) => new PairPictures(new IntakeLimits(scratchFolder));

    /// <summary>Compares two makes without a shop.</summary>
    public static IMakeComparison MakeComparison() => new MakeComparison();

    /// <summary>Reads jobs, layouts and contours without a shop.</summary>
    public static IJobReader JobReader() => new JobReader();

    /// <summary>Reads upkeep and stock rooms without a shop.</summary>
    public static ICareFiles CareFiles() => new CareFiles();

    /// <summary>Writes layouts of jobs without a shop.</summary>
    public static ILayoutWriter LayoutWriter() => new LayoutWriter();

    /// <summary>Reads weeks without a shop.</summary>
    public static IWeekFiles WeekFiles() => new WeekFiles();

    /// <summary>Reads quotes without a shop.</summary>
    public static IQuoteFiles QuoteFiles() => new QuoteFiles();

    /// <summary>Writes papers without a shop.</summary>
    public static IRunDocuments Documents() => new RunDocuments();

    /// <summary>Reads files of colour without a shop.</summary>
    public static IColourFiles ColourFiles() => new ColourFiles();

    private static ShopServices Together(ShopFolder place, Catalogue catalogue, IShopStore store, TimeProvider clock)
    {
        ProgressBoard board = new();
        string scratch = Path.Combine(place.Root, "scratch");
        IntakeLimits limits = new(ScratchOfProcess.In(scratch)) { Measurer = MeasureFilesCommand.Program() };
        PageRenderer renderer = new(limits);
        RunDocuments documents = new();
        PressFiles files = new(renderer, documents, clock, scratch);
        files.Sweep();
        SqliteLogStore log = new(place.StoreFile);
        LookShelf looks = new(place);
        looks.Sweep();
        PairPictures pairs = new(limits);
        LearnEstimates learn = new(log);
        InkMeasure inks = new(renderer, looks, catalogue.OpticsOf);
        TryOrder trying = new(catalogue, store, inks, looks, learn);
        PlanRuns plan = new(catalogue, store, inks, looks, learn);
        SqlitePressCareBook book = new(place.StoreFile);
        MakeRun make = new(place, catalogue, store, files, board, new(book, log));
        PlanWeek week = new(place, catalogue, store, log, clock, new(catalogue, store, plan, new(place, store, make), log), book, new(book, log));
        LayerServices layers = LayerServices.Of(looks, catalogue, store, new ItemPlaneFiles(renderer), pairs, new LookPictures(), new ColourFiles(), clock);
        return new(
            place.Root,
            catalogue,
            store,
            renderer,
            documents,
            new TakeOrders(place, catalogue, new OrderReader(), store, clock),
            new CheckItems(place, catalogue, store, new ArtworkReader(limits), renderer),
            plan,
            make,
            new QuoteOrder(place, catalogue, store, documents, clock, trying),
            board,
            ColourServices.Of(place, catalogue, store, renderer, new ScreenPictures(), new ColourFiles(), new ChartFiles(scratch), clock),
            layers,
            ProofServices.Of(place, layers, new(catalogue, store, pairs), new SqliteProofStore(place.StoreFile), clock))
        {
            Clock = clock,
            RunInks = new RunInks(),
            Pictures = new ScreenPictures(),
            LayoutFiles = new LayoutWriter(),
            Dots = new DotFiles(new PlateStream(limits), clock, scratch),
            Press = PressServices.Of(catalogue, store, book, new SqliteStockRoom(place.StoreFile), new PressPapers(), clock, week, log),
            TryOrder = trying,
            Log = LogServices.Of(catalogue, store, log, clock, new SqliteStockRoom(place.StoreFile)),
            Week = week,
            Sheets = SheetServices.Of(place, catalogue, store, new PressPlanes(place.Pyramids), new LookPictures()),
        };
    }
}
