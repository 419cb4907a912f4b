namespace Laydown.Colour.Fits;

/// <summary>One kind of model that was tried, and how well it predicts patches it has not seen.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="YuleNielsen">The factor n it found best.</param>
/// <param name="CrossValidated">Residuals of held-out patches.</param>
public sealed record KindResidual(FitKind Kind, double YuleNielsen, ResidualSummary CrossValidated);
