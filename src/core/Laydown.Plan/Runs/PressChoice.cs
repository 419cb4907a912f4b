using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Press.Machines;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;

namespace Laydown.Plan.Runs;

/// <summary>The cheapest press that can print an item.</summary>
/// <param name="Press">The press.</param>
/// <param name="Condition">The print condition.</param>
/// <param name="InkSet">The inks.</param>
/// <param name="Stock">The stock.</param>
/// <param name="Stack">The layers on this press.</param>
/// <param name="Mode">The mode for a full sheet of the stock.</param>
/// <param name="PressCost">Press time for the item alone, set-up included, in money units.</param>
/// <param name="Because">Why it, and why not the others.</param>
public sealed record PressChoice(
    PressDescription Press,
    PrintCondition Condition,
    InkSet InkSet,
    Stock Stock,
    LayerStack Stack,
    ModeChoice Mode,
    decimal PressCost,
    IReadOnlyList<string> Because);
