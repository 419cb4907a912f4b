using Laydown.Press.Machines;

namespace Laydown.Plan.Runs;

/// <summary>A mode as judged.</summary>
/// <param name="Mode">The mode.</param>
/// <param name="Seconds">Time to scan one sheet, s.</param>
/// <param name="Points">What it was judged by.</param>
/// <param name="Bands">Its bands; null where nobody figured them.</param>
internal sealed record JudgedMode(Mode Mode, double Seconds, IReadOnlyList<ModePoint> Points, BandScore? Bands)
{
    /// <summary>Why it cannot print this; null where it can.</summary>
    public string? Cannot => Points.FirstOrDefault(p => p.Standing == ModeStanding.Out)?.Said;

    /// <summary>What of it is coarser than wished, bands apart; null where nothing is.</summary>
    public string? Coarse => Points.FirstOrDefault(p => p.Standing == ModeStanding.Coarse && p.About is not ("solids and tints" or "due date"))?.Said;

    /// <summary>Why it is too slow for the due date; null where it is not.</summary>
    public string? Late => Points.FirstOrDefault(p => p is { Standing: ModeStanding.Coarse, About: "due date" })?.Said;
}
