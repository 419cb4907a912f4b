using Laydown.Plan.Log;

namespace Laydown.Shop.Log;

/// <summary>A page of the log.</summary>
/// <param name="Entries">Its entries, latest first.</param>
/// <param name="All">How many entries there are for this wish on all pages.</param>
/// <param name="Next">Where the next page begins; null for the last one.</param>
public sealed record LogPage(IReadOnlyList<LogEntry> Entries, int All, LogCursor? Next);
