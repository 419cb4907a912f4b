using System.Globalization;
using System.Text;

namespace Laydown.Bench.Week;

/// <summary>The table of drawn weeks.</summary>
internal static class PlannerTable
{
    /// <summary>The table.</summary>
    public static string Text(PlannerResult result)
    {
        StringBuilder text = new("# The planner of the week: drawn weeks\n\nWritten by `./bench/run planner --keep`; do not edit. Weeks are drawn from seeds, invented.\n\n");
        text.Append(CultureInfo.InvariantCulture, $"Time within a process, wall, {result.Date}; a plan stands, a run is put eight hours later, all is planned again with its reasons.\n\n");
        text.Append("| week | first answer s, wanted 1 | planned again s, wanted 2 | cost first | planned | again |\n| --- | --- | --- | --- | --- | --- |\n");
        foreach (PlannerTime t in result.Times)
            text.Append(CultureInfo.InvariantCulture, $"| {t.Name} | {t.FirstSeconds:0.00} | {t.AgainSeconds:0.00} | {t.First} | {t.Planned} | {t.Again} |\n");
        text.Append(CultureInfo.InvariantCulture, $"\nOne press that is never shut, where lateness alone counts: the planner beside the search of sequences with {result.SequenceSeconds:0.##} s, which shares no code with it.\n\n");
        text.Append("| runs | seed | first answer | planned | as a sequence | gap % | s |\n| --- | --- | --- | --- | --- | --- | --- |\n");
        foreach (PlannerRow r in result.Rows)
            text.Append(CultureInfo.InvariantCulture, $"| {r.Runs} | {r.Seed} | {r.First} | {r.Planned} | {r.Sequence} | {r.GapPercent?.ToString("0.00", CultureInfo.InvariantCulture) ?? "-"} | {r.Seconds:0.00} |\n");
        return text.ToString();
    }
}
