namespace Laydown.Colour.Fits;

/// <summary>How a print is to be modelled.</summary>
/// <param name="Kind">The kind of model; null tries all that the chart allows and takes the one whose held-out patches come out best.</param>
/// <param name="Folds">Parts into which the patches are split to predict each from the others, 2 to 20.</param>
/// <param name="Seed">Seed of the split.</param>
/// <param name="Thorough">Whether the regression's kernel is searched for longer: minutes instead of seconds, worth it from six inks on.</param>
public sealed record FitChoices(FitKind? Kind, int Folds, int Seed, bool Thorough)
{
    /// <summary>The best kind, five folds.</summary>
    public static FitChoices Usual { get; } = new(null, 5, 1, false);
}
