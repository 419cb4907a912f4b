using Laydown.Shop.Run;

namespace Laydown.Shop.Week;

/// <summary>What the shop keeps of its week between two plans.</summary>
/// <param name="Pins">Runs put at a time by hand.</param>
/// <param name="Orders">Runs whose order is locked.</param>
/// <param name="Stood">The plan kept last.</param>
/// <param name="Before">What was kept before the last change by hand, so that it can be taken back; null where there is none.</param>
/// <param name="Moved">The change of press that was the last change by hand; null where that was another.</param>
public sealed record WeekBook(
    IReadOnlyList<WeekPin> Pins, IReadOnlyList<IReadOnlyList<string>> Orders, IReadOnlyList<WeekStood> Stood, WeekBook? Before = null, PressMove? Moved = null)
{
    /// <summary>A week nobody has touched.</summary>
    public static WeekBook Empty { get; } = new([], [], []);
}
