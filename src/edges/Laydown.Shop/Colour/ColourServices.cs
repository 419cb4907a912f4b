using Laydown.Shop.Artwork;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Colour;

/// <summary>What the shop can do with colour.</summary>
/// <param name="FitReadings">Fits a model to a file.</param>
/// <param name="FitCondition">Fits a print condition.</param>
/// <param name="MakeCondition">Makes its profile.</param>
/// <param name="ListConditions">Lists print conditions.</param>
/// <param name="ShowCondition">Shows one.</param>
/// <param name="FigureCondition">What one can do: gamut, neutral ramp.</param>
/// <param name="Predict">Inks → colours.</param>
/// <param name="Separate">Colours → inks.</param>
/// <param name="Score">Measured against predicted.</param>
/// <param name="Calibrate">Curves and limits.</param>
/// <param name="CheckDrift">A new reading against a condition.</param>
/// <param name="TakeReadings">Takes readings in.</param>
/// <param name="ListReadings">Lists them.</param>
/// <param name="NamedColours">Lists named colours.</param>
/// <param name="AddNamedColour">Adds one.</param>
/// <param name="SolveNamedColours">Inks for them.</param>
/// <param name="MakeChart">Makes charts.</param>
/// <param name="MakeSwatches">Makes the sheet of named colours.</param>
/// <param name="MapShift">How far an item's colours move.</param>
public sealed record ColourServices(
    FitReadings FitReadings,
    FitCondition FitCondition,
    MakeCondition MakeCondition,
    ListConditions ListConditions,
    ShowCondition ShowCondition,
    FigureCondition FigureCondition,
    PredictColours Predict,
    SeparateColours Separate,
    ScoreReadings Score,
    CalibrateInks Calibrate,
    CheckDrift CheckDrift,
    TakeReadings TakeReadings,
    ListReadings ListReadings,
    ListNamedColours NamedColours,
    AddNamedColour AddNamedColour,
    SolveNamedColours SolveNamedColours,
    MakeChart MakeChart,
    MakeSwatches MakeSwatches,
    MapShift MapShift)
{
    /// <summary>Fits the optics of inks.</summary>
    public required FitInkOptics FitInkOptics { get; init; }

    /// <summary>Shows the optics of inks.</summary>
    public required ShowInkOptics ShowInkOptics { get; init; }

    /// <summary>All of it for one shop.</summary>
    /// <param name="folder">The shop's folder.</param>
    /// <param name="catalogue">What it has.</param>
    /// <param name="store">Its items.</param>
    /// <param name="renderer">Makes pictures of pages.</param>
    /// <param name="pictures">Reads and writes pictures.</param>
    /// <param name="files">Reads and writes files of colour.</param>
    /// <param name="charts">Writes charts.</param>
    /// <param name="clock">Tells the time.</param>
    public static ColourServices Of(
        ShopFolder folder, Catalogue catalogue, IShopStore store, IPageRenderer renderer, IScreenPictures pictures, IColourFiles files, IChartFiles charts, TimeProvider clock)
    {
        SolveNamedColours solve = new(folder, files);
        MakeChart make = new(folder, catalogue, files, charts, clock);
        return new(
            new(files), new(folder, files, clock), new(folder, files), new(folder, files), new(folder, files), new(folder, files), new(files), new(files),
            new(files), new(files), new(folder, files, clock), new(folder, files), new(folder), new(folder, files), new(folder, files), solve, make,
            new(folder, files, solve, make), new(folder, store, renderer, pictures, files))
        {
            FitInkOptics = new(folder, files, catalogue.Stocks, clock),
            ShowInkOptics = new(folder, files),
        };
    }
}
