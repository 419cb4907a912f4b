namespace Laydown.Shop.Week;

/// <summary>A stop longer than the lines of a press may stand, with the shop's clock.</summary>
/// <param name="PressId">The press.</param>
/// <param name="Start">When the press was last used.</param>
/// <param name="End">When it would be used again if nothing were done about the stop.</param>
/// <param name="Ways">The ways through it with what each costs, the cheapest first: that one stands in the week.</param>
public sealed record WeekStopView(string PressId, DateTimeOffset Start, DateTimeOffset End, IReadOnlyList<WeekStopCost> Ways)
{
    /// <summary>In a sentence, such as <c>66 h: Short runs (1) 45.84, Storage fluid 127.00.</c></summary>
    public string Words => Invariant($"{(End - Start).TotalHours:0.##} h: {string.Join(", ", Ways.Select(w => Invariant($"{w.Name}{(w.ShortRuns > 0 ? Invariant($" ({w.ShortRuns})") : "")} {w.Cost}")))}");
}
