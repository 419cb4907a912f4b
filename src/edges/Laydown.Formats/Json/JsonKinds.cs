using Laydown.Artwork.Pages;
using Laydown.Layout.Jobs;
using Laydown.Plan.Calendar;
using Laydown.Plan.Costs;
using Laydown.Plan.Orders;
using Laydown.Plan.StockRoom;
using Laydown.Plan.Upkeep;
using Laydown.Plan.Week;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Press.Machines;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;

namespace Laydown.Formats.Json;

/// <summary>The kinds of record that have a published schema, and the name each carries in its files.</summary>
internal static class JsonKinds
{
    /// <summary>Version that is written and taken.</summary>
    public const int Version = 1;

    /// <summary>Type by kind, in the order they are published.</summary>
    public static IReadOnlyDictionary<string, Type> Types { get; } = new Dictionary<string, Type>(StringComparer.Ordinal)
    {
        ["shop"] = typeof(ShopFile),
        ["press"] = typeof(PressDescription),
        ["ink-set"] = typeof(InkSet),
        ["ink-optics"] = typeof(InkOptics),
        ["stock"] = typeof(Stock),
        ["print-condition"] = typeof(PrintCondition),
        ["calendar"] = typeof(ShopCalendar),
        ["upkeep"] = typeof(UpkeepRequest),
        ["stock-room"] = typeof(StockRoomFile),
        ["week"] = typeof(WeekProblem),
        ["quote-job"] = typeof(QuoteJob),
        ["named-colours"] = typeof(ColourLibrary),
        ["order"] = typeof(Order),
        ["artwork"] = typeof(ArtworkFile),
        ["stack"] = typeof(LayerStack),
        ["run"] = typeof(Laydown.Plan.Runs.Run),
        ["layout-job"] = typeof(LayoutJob),
        ["layout"] = typeof(JobLayout),
    };

    /// <summary>The kind of a type, such as <c>press</c>.</summary>
    /// <exception cref="ArgumentException">The type has no published schema.</exception>
    public static string Of(Type type) =>
        Types.FirstOrDefault(k => k.Value == type).Key
        ?? throw new ArgumentException(Invariant($"{type.Name} has no published schema; wanted one of {string.Join(", ", Types.Values.Select(t => t.Name))}."), nameof(type));

    /// <summary>What stands in the field <c>schema</c> of a kind, such as <c>laydown/press</c>.</summary>
    public static string Name(string kind) => Invariant($"laydown/{kind}");
}
