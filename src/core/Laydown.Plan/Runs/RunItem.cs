namespace Laydown.Plan.Runs;

/// <summary>An item within a run.</summary>
/// <param name="ItemId">The item.</param>
/// <param name="OrderId">Its order.</param>
/// <param name="Title">What it is.</param>
/// <param name="Pieces">How many.</param>
/// <param name="Due">When it is due.</param>
public sealed record RunItem(string ItemId, string OrderId, string Title, int Pieces, DateOnly Due);
