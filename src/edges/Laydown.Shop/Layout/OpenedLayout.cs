using Laydown.Layout.Hands;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Runs;
using Laydown.Shop.Run;

namespace Laydown.Shop.Layout;

/// <summary>The layout of a run, ready to be worked on by hand.</summary>
/// <param name="Record">The run as it stands.</param>
/// <param name="Context">What it refers to.</param>
/// <param name="Rules">What a layout of it must keep to.</param>
/// <param name="Names">Names of its pieces for people, by id.</param>
/// <param name="Sheets">Its layout.</param>
/// <param name="Mark">Short hash of its layout: a change is only saved onto the layout it began with.</param>
/// <param name="Closed">Why no other layout can be saved now; null where one can.</param>
public sealed record OpenedLayout(
    RunRecord Record,
    RunContext Context,
    HandRules Rules,
    IReadOnlyDictionary<string, string> Names,
    IReadOnlyList<HandSheet> Sheets,
    string Mark,
    InputFault? Closed)
{
    /// <summary>Why nothing is changed, tried or saved: the layout is released; null where it is not.</summary>
    public InputFault? Released => ReleaseLayout.Holding(Record);

    /// <summary>What a sheet is called here.</summary>
    public string SheetWord => Rules.IsRoll ? "roll" : "board";

    /// <summary>Room of its pieces beyond what is printed: rules and sheets count it.</summary>
    public HandRooms Rooms { get; init; } = HandRooms.None;

    /// <summary>Sheets under hands as layouts of what is printed.</summary>
    public IReadOnlyList<SheetLayout> LayoutsOf(IReadOnlyList<HandSheet> sheets) => Rooms.Printed(HandSheets.Layouts(sheets, Rules));

    /// <summary>What its times are corrected by; null where they stand as reckoned.</summary>
    internal Laydown.Plan.Log.EstimateModel? Learnt { get; init; }

    /// <summary>The run as it is formed before it is laid out.</summary>
    public required FormedRun Formed { get; init; }
}
