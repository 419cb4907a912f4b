using System.Globalization;
using System.Text;

namespace Laydown.Bench.Week;

/// <summary>The table of published sequences.</summary>
internal static class WeekTable
{
    /// <summary>The table.</summary>
    public static string Text(WeekResult result)
    {
        string every = result.Sample > 1 ? Invariant($", every {result.Sample}th of the folder") : "";
        string time = Invariant($"{result.BudgetSeconds:0.##} s {(result.ByProcessor ? "of each processor" : "wall")} x {result.Workers}");
        StringBuilder text = new("# Week: published sequences\n\nWritten by `./bench/run week --keep`; do not edit. Jobs on one machine, set-up between any two, least weighted lateness; ");
        text.Append("the optima are proven. Every order was judged by an independent checker (`tests/Laydown.Instances`); a refused one counts as failed. Steps of the search were tuned on these same instances.\n\n");
        text.Append("| figure | wanted | found |\n| --- | --- | --- |\n");
        text.Append(CultureInfo.InvariantCulture, $"| mean gap, optimum above 1000 | at most 0.3 % | {result.MeanGapPercent:0.000} % |\n");
        text.Append(CultureInfo.InvariantCulture, $"| optima met, optimum above 1000 | at least 75 % | {result.MetLarge} of {result.LargeCount} |\n");
        text.Append(CultureInfo.InvariantCulture, $"| optima met, all | at least 75 % | {result.Met} of {result.Known} |\n| failed | 0 | {result.Failed} |\n");
        text.Append(CultureInfo.InvariantCulture, $"\n{result.Rows.Count} instances{every}, {time}, seed {result.Seed}, {result.Date}.\n");
        text.Append("\n| instance | jobs | ours | optimum | gap % | wall s | processor s | last gain, wall s | fault |\n| --- | --- | --- | --- | --- | --- | --- | --- | --- |\n");
        foreach (WeekRow r in result.Rows)
            text.Append(CultureInfo.InvariantCulture, $"| {r.Instance} | {r.Jobs} | {r.Ours} | {r.Best?.ToString(CultureInfo.InvariantCulture) ?? "-"} | {r.GapPercent?.ToString("0.000", CultureInfo.InvariantCulture) ?? "-"} | ")
                .Append(CultureInfo.InvariantCulture, $"{r.Seconds:0.00} | {r.CpuSeconds:0.00} | {r.LastGainSeconds:0.00} | {r.Fault} |\n");
        return text.ToString();
    }
}
