using Laydown.Measures;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Cli.Words;

/// <summary>States as people say them.</summary>
internal static class StateWords
{
    public static string Of(ItemState state) => state switch
    {
        ItemState.Waiting => "waiting",
        ItemState.Stopped => "held back",
        ItemState.Ready => "ready",
        ItemState.Planned => "planned",
        _ => "made",
    };

    public static string Of(RunState state) => state switch
    {
        RunState.Waiting => "waiting",
        RunState.InProgress => "being made",
        RunState.Completed => "made",
        _ => "aborted",
    };

    /// <summary>The first reason an item is held back.</summary>
    public static string WhyHeld(ItemRecord item) => item.Faults.Count > 0
        ? item.Faults[0].ToString()
        : item.Findings.Where(f => f.Severity == Severity.Stop).Select(f => Invariant($"{f.What} {f.Measured}; wanted {f.Wanted}.")).FirstOrDefault() ?? "";
}
