using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Press.Machines;
using Laydown.Press.Stocks;

namespace Laydown.Plan.Runs;

/// <summary>What runs can be formed on.</summary>
/// <param name="Presses">Presses.</param>
/// <param name="InkSets">Ink sets.</param>
/// <param name="Stocks">Stocks.</param>
/// <param name="Conditions">Print conditions.</param>
public sealed record PressRoom(
    IReadOnlyList<PressDescription> Presses, IReadOnlyList<InkSet> InkSets, IReadOnlyList<Stock> Stocks, IReadOnlyList<PrintCondition> Conditions)
{
    /// <summary>Figures bands for the choice of modes; null where nobody does.</summary>
    public BandScore.Source? Bands { get; init; }
}
