using Laydown.Plan.Runs;

namespace Laydown.Output.Documents;

/// <summary>What two people measured before a run was let go, as it stands on the sheet.</summary>
/// <param name="Points">Thickness at each point, mm.</param>
/// <param name="Highest">Thickest that either of them found, mm.</param>
/// <param name="HeadHeight">Head height over the belt that was set, mm.</param>
/// <param name="Rows">Who, when, what else.</param>
internal sealed record LetGoRows(IReadOnlyList<string> Points, string Highest, string HeadHeight, IReadOnlyList<NamedValue> Rows)
{
    /// <summary>The words of a release; null where there is none.</summary>
    internal static LetGoRows? Of(RunRelease? letGo) => letGo is null ? null : new(
        [.. letGo.Measured.ThicknessMm.Select(t => Invariant($"{t:0.00}"))], Invariant($"{letGo.ThickestMm:0.00}"), Invariant($"{letGo.HeadGap.Mm:0.0}"),
        [
            new("Measured by", letGo.Measured.MeasuredBy),
            new("Checked by", Invariant($"{letGo.Measured.CheckedBy}, who found {letGo.Measured.CheckedHighestMm:0.00} mm at the highest place")),
            new("Highest edge", Invariant($"{letGo.Measured.EdgeLiftMm:0.0} mm over the table")),
            new("Highest point", Invariant($"{letGo.HighestPointMm:0.00} mm with edge and ink; head height over the belt {letGo.HeadGap.Mm:0.0} mm follows from it")),
            new("Seen", letGo.Measured.Seen ? "what must be seen was seen" : "nothing had to be seen"),
            new("Let go", Invariant($"{letGo.At:yyyy-MM-dd HH:mm}")),
        ]);
}
