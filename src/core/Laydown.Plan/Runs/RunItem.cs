namespace Laydown.Plan.Runs;

/// <summary>An item within a run.</summary>
/// <param name="ItemId">The item.</param>
/// <param name="OrderId">Its order.</param>
/// <param name="Title">What it is.</param>
/// <param name="Pieces">How many are made, copies beyond what was asked for contained.</param>
/// <param name="Due">When it is due.</param>
public sealed record RunItem(string ItemId, string OrderId, string Title, int Pieces, DateOnly Due)
{
    /// <summary>How many were asked for; null in runs planned before this was kept. What is made beyond is given in addition.</summary>
    public int? Asked { get; init; }

    /// <summary>How many are made, in words; with what was asked for where that is fewer, such as <c>23 pieces, 20 asked for</c>.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public string PiecesInWords => Invariant($"{Pieces} {(Pieces == 1 ? "piece" : "pieces")}{(Asked is { } asked && asked < Pieces ? Invariant($", {asked} asked for") : "")}");
}
