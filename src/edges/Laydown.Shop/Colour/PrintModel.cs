using Laydown.Colour.Fits;
using Laydown.Colour.Spaces;

namespace Laydown.Shop.Colour;

/// <summary>A fitted model at hand: its numbers and what works with them.</summary>
/// <param name="Name">What it was fitted to.</param>
/// <param name="Kind">Kind of model.</param>
/// <param name="CrossValidated">What a new colour has to expect, ΔE00.</param>
/// <param name="Model">The model.</param>
public sealed record PrintModel(string Name, FitKind Kind, ResidualSummary CrossValidated, GridModel Model)
{
    /// <summary>Inks in order.</summary>
    public IReadOnlyList<string> InkNames => Model.Grid.InkNames;

    /// <summary>A colour as instruments report it, seen relative to the bare stock.</summary>
    public Lab Relative(Lab absolute) => Lab.From(absolute.ToXyz(WhitePoints.Pcs), Model.White);

    /// <summary>A colour relative to the bare stock, as instruments report it.</summary>
    public Lab Absolute(Lab relative) => Lab.From(relative.ToXyz(Model.White), WhitePoints.Pcs);
}
