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

namespace Laydown.Shop;

/// <summary>A shop that is open: its folder, what it has, what it remembers and everything it can do. Screens and commands take this and nothing else.</summary>
/// <param name="Folder">Full path of the shop's folder.</param>
/// <param name="Catalogue">What the shop has.</param>
/// <param name="Store">What it remembers.</param>
/// <param name="Renderer">Makes pictures of pages.</param>
/// <param name="Documents">Writes papers.</param>
/// <param name="TakeOrders">Takes orders in.</param>
/// <param name="CheckItems">Checks artwork and derives stacks.</param>
/// <param name="PlanRuns">Plans runs.</param>
/// <param name="MakeRun">Makes the files of a run.</param>
/// <param name="QuoteOrder">Quotes an order.</param>
/// <param name="Progress">How far runs being made are.</param>
/// <param name="Colour">What it can do with colour.</param>
/// <param name="Layers">What it can do with layers and looks.</param>
/// <param name="Proof">What it can do with customer proofs.</param>
public sealed record ShopServices(
    string Folder,
    Catalogue Catalogue,
    IShopStore Store,
    IPageRenderer Renderer,
    IRunDocuments Documents,
    TakeOrders TakeOrders,
    CheckItems CheckItems,
    PlanRuns PlanRuns,
    MakeRun MakeRun,
    QuoteOrder QuoteOrder,
    ProgressBoard Progress,
    ColourServices Colour,
    LayerServices Layers,
    ProofServices Proof)
{
    private readonly PlanWeek? week;

    /// <summary>Looks into press files of made runs; null where nothing can.</summary>
    public IRunInks? RunInks { get; init; }

    /// <summary>Writes pictures for the screen; null where nothing can.</summary>
    public IScreenPictures? Pictures { get; init; }

    /// <summary>Makes dots; null where nothing can.</summary>
    public IDotFiles? Dots { get; init; }

    /// <summary>Writes layouts as files; null where nothing can.</summary>
    public ILayoutWriter? LayoutFiles { get; init; }

    /// <summary>Makes the dots of a run.</summary>
    public MakeDots MakeDots => new(new ShopFolder(Folder), Store, MakeRun, Dots, Progress);

    /// <summary>Tells what time it is.</summary>
    public required TimeProvider Clock { get; init; }

    /// <summary>Lets runs go to the press.</summary>
    public ReleaseRun Release => new(Catalogue, Store, MakeRun, Clock, Log?.Keep, Press.Levels, Press.Supply);

    /// <summary>Signs first pieces off; null in a shop without a log.</summary>
    public ApproveFirstPiece? FirstPiece => Log is null ? null : new(Store, Log);

    /// <summary>Takes another mode for a run.</summary>
    public ChooseMode ChooseMode => new(Catalogue, Store, PlanRuns, new(new ShopFolder(Folder), Store, MakeRun));

    /// <summary>What it can do with layouts by hand.</summary>
    public LayoutServices Layouts => LayoutServices.Of(new ShopFolder(Folder), Catalogue, Store, PlanRuns, MakeRun, Press.Supply);

    /// <summary>Shows passes and forecasts bands.</summary>
    public ShowPasses Passes => new(this, RunInks);

    /// <summary>What it can do at its presses and in its stock room.</summary>
    public required PressServices Press { get; init; }

    /// <summary>Puts runs onto presses and shifts.</summary>
    public PlanWeek Week { get => week ?? new(new ShopFolder(Folder), Catalogue, Store, null, Clock, TakePress); init => week = value; }

    /// <summary>Writes set-up sheets as runs stand now.</summary>
    public SetUpPaper SetUpPaper => new(Catalogue, Store, PlanRuns, Documents, Press.Levels, Press.Supply);

    /// <summary>Takes another press for a run.</summary>
    public TakePress TakePress => new(Catalogue, Store, PlanRuns, new(new ShopFolder(Folder), Store, MakeRun));

    /// <summary>Prices orders in other quantities and made in other ways; null where nothing can.</summary>
    public TryOrder? TryOrder { get; init; }

    /// <summary>What it can do with its log; null where it keeps none.</summary>
    public LogServices? Log { get; init; }

    /// <summary>What it can do to look at made sheets.</summary>
    public required SheetServices Sheets { get; init; }
}
