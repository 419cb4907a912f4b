namespace Laydown.Plan.Calendar;

/// <summary>One occurrence of a maintenance window.</summary>
/// <param name="Start">Its start, with the shop's offset from UTC at that instant.</param>
/// <param name="End">Its end, after the start.</param>
/// <param name="What">What is done.</param>
/// <param name="By">Who does it; null where nobody is named.</param>
/// <param name="RunsMayPause">Whether a run may stand over it.</param>
public sealed record MaintenanceSpan(DateTimeOffset Start, DateTimeOffset End, string What, string? By, bool RunsMayPause)
{
    /// <summary>Such as <c>carriage greased, by Ada; no run stands over it</c>.</summary>
    public override string ToString() => Invariant($"{What}{(By is null ? "" : ", by " + By)}; {(RunsMayPause ? "a run may stand over it" : "no run stands over it")}");
}
