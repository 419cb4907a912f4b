using Laydown.Layout.Sheets;
using Laydown.Plan.Costs;
using Laydown.Press.Stacks;

namespace Laydown.Plan.Runs;

/// <summary>Sheets printed under one set-up.</summary>
/// <param name="Id">Unique in the shop, such as <c>R-20261126-03</c>.</param>
/// <param name="PressId">The press.</param>
/// <param name="ConditionId">The print condition.</param>
/// <param name="StockId">The stock.</param>
/// <param name="Stack">Its layers.</param>
/// <param name="Mode">The mode and why.</param>
/// <param name="Items">What is in it.</param>
/// <param name="Sheets">Layouts of its sheets; for a roll one long one.</param>
/// <param name="Belt">How sheets lie on the belt.</param>
/// <param name="Time">Time.</param>
/// <param name="Inks">Ink of each role.</param>
/// <param name="SetUp">How the press is set.</param>
/// <param name="Cost">Cost and price.</param>
/// <param name="Due">Earliest due date of its items.</param>
/// <param name="BesideStockIds">Further stocks: blanks of other sizes, or the roll beside the first; the sheets name theirs. Null for none.</param>
public sealed record Run(
    string Id,
    string PressId,
    string ConditionId,
    string StockId,
    LayerStack Stack,
    ModeChoice Mode,
    IReadOnlyList<RunItem> Items,
    IReadOnlyList<SheetLayout> Sheets,
    BeltPlace Belt,
    RunTime Time,
    IReadOnlyList<InkUse> Inks,
    SetUp SetUp,
    CostSheet Cost,
    DateOnly Due,
    IReadOnlyList<string>? BesideStockIds = null)
{
    /// <summary>What is to be known of the layout, in sentences: sets that could not be kept together, copies made beyond those asked for.</summary>
    public IReadOnlyList<string> LayoutNotes { get; init; } = [];

    /// <summary>Work after the press, all items, min; 0 in runs planned before it was kept.</summary>
    public double FinishingMinutes { get; init; }

    /// <summary>The same by kind, in the order in which it is done; empty in runs planned before it was kept.</summary>
    public IReadOnlyList<FinishingStep> FinishingSteps { get; init; } = [];

    /// <summary>Who took this press for it in place of another, and why; null where it stands on the press it was planned for.</summary>
    [System.Text.Json.Serialization.JsonIgnore(Condition = System.Text.Json.Serialization.JsonIgnoreCondition.WhenWritingNull)]
    public PressTaken? OnPress { get; init; }

    /// <summary>How many sheets go through the press.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public int SheetCount => Sheets.Sum(s => s.Repeats);
}
