namespace Laydown.Plan.Log;

/// <summary>How long presses were to be worked in a time, and how long they ran, each minute of a press counted once.</summary>
/// <param name="OpenMinutes">Minutes they were to be worked.</param>
/// <param name="RunMinutes">Minutes of these in which a run was on; never more.</param>
/// <param name="OutsideMinutes">Minutes in which a run was on while the press was not to be worked.</param>
/// <param name="TwiceMinutes">Minutes that a further run tells of a press another run was on.</param>
public sealed record PressHours(double OpenMinutes, double RunMinutes, double OutsideMinutes = 0, double TwiceMinutes = 0)
{
    /// <summary>Several presses together.</summary>
    public static PressHours Sum(IEnumerable<PressHours> presses) => presses.Aggregate(new PressHours(0, 0), (all, one) => new(
        all.OpenMinutes + one.OpenMinutes, all.RunMinutes + one.RunMinutes, all.OutsideMinutes + one.OutsideMinutes, all.TwiceMinutes + one.TwiceMinutes));

    /// <summary>In words.</summary>
    public string Words => Invariant($"{RunMinutes:0} min run of {OpenMinutes:0} min open")
        + (OutsideMinutes >= 0.5 ? Invariant($"; {OutsideMinutes:0} min run while shut are left out") : "")
        + (TwiceMinutes >= 0.5 ? Invariant($"; {TwiceMinutes:0} min that two runs tell of one press are counted once") : "");
}
