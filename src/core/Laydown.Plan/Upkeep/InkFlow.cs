namespace Laydown.Plan.Upkeep;

/// <summary>Ink drawn from one tank, evenly over a span or all at once.</summary>
/// <param name="Start">When it begins.</param>
/// <param name="End">When it ends; the start itself for ink drawn at once.</param>
/// <param name="Ml">How much, ml.</param>
/// <param name="RunId">The run; null for care.</param>
internal sealed record InkFlow(DateTimeOffset Start, DateTimeOffset End, double Ml, string? RunId)
{
    /// <summary>Whether it is drawn all at once.</summary>
    public bool AtOnce => End == Start;
}
