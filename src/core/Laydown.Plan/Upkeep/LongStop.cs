namespace Laydown.Plan.Upkeep;

/// <summary>A stop longer than the lines may stand, with the ways through it.</summary>
/// <param name="Start">When the press was last used.</param>
/// <param name="End">When it is used again; where no run is planned, the first shift in which it could be.</param>
/// <param name="Hours">Hours between, on the time line of UTC.</param>
/// <param name="LimitHours">The limit that is passed, h.</param>
/// <param name="Options">The ways through it, cheapest first.</param>
/// <param name="Before">What to do before, in steps.</param>
/// <param name="After">What to do when the press is used again, in steps.</param>
/// <param name="Cautions">Cautions of those steps.</param>
/// <param name="Source">Where the limit comes from.</param>
public sealed record LongStop(
    DateTimeOffset Start,
    DateTimeOffset End,
    double Hours,
    double LimitHours,
    IReadOnlyList<LongStopOption> Options,
    IReadOnlyList<string> Before,
    IReadOnlyList<string> After,
    IReadOnlyList<string> Cautions,
    string Source)
{
    /// <summary>Whether no run is planned that ends it: it lasts at least that long.</summary>
    public bool NothingAfter { get; init; }
}
