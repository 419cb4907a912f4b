using Laydown.Colour.Fits;

namespace Laydown.Shop.Colour;

/// <summary>How well a model predicts the chart it was fitted to.</summary>
/// <param name="Readings">Name of the readings.</param>
/// <param name="InkNames">Inks.</param>
/// <param name="Kind">Kind of model kept.</param>
/// <param name="YuleNielsen">Its factor n.</param>
/// <param name="Patches">Readings taken, repeats counted.</param>
/// <param name="Fitted">Residuals of patches the model has seen.</param>
/// <param name="CrossValidated">Residuals of patches predicted from the others.</param>
/// <param name="Tried">Kinds tried.</param>
/// <param name="Worst">Every held-out patch, worst first.</param>
/// <param name="Notes">What the reader of the file had to decide.</param>
public sealed record FitReport(
    string Readings,
    IReadOnlyList<string> InkNames,
    FitKind Kind,
    double YuleNielsen,
    int Patches,
    ResidualSummary Fitted,
    ResidualSummary CrossValidated,
    IReadOnlyList<KindResidual> Tried,
    IReadOnlyList<PatchResidual> Worst,
    IReadOnlyList<string> Notes)
{
    /// <summary>The report on a fit.</summary>
    public static FitReport Of(Laydown.Colour.Readings.ReadingSet readings, FittedPrint print) => new(
        readings.Name, print.InkNames, print.Kind, print.YuleNielsen, readings.Patches.Count, print.Fitted, print.CrossValidated, print.Tried,
        print.Patches, readings.Notes);
}
