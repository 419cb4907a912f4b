namespace Laydown.Colour.Fits;

/// <summary>A print as fitted to the readings of its chart.</summary>
/// <param name="InkNames">Names of the inks in order.</param>
/// <param name="Kind">Kind of the model kept.</param>
/// <param name="YuleNielsen">Its factor n.</param>
/// <param name="Grid">The model as numbers; <see cref="GridModel"/> works with it.</param>
/// <param name="Fitted">Residuals of the patches the model has seen, with what the grid adds.</param>
/// <param name="CrossValidated">Residuals of patches predicted from the others: what a new colour has to expect.</param>
/// <param name="Tried">All kinds tried.</param>
/// <param name="Patches">Held-out residual of each patch, worst first.</param>
public sealed record FittedPrint(
    IReadOnlyList<string> InkNames,
    FitKind Kind,
    double YuleNielsen,
    FitGrid Grid,
    ResidualSummary Fitted,
    ResidualSummary CrossValidated,
    IReadOnlyList<KindResidual> Tried,
    IReadOnlyList<PatchResidual> Patches);
