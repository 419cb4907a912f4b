using Laydown.Layout.Sheets;
using Laydown.Plan.Log;
using Laydown.Plan.Runs;

namespace Laydown.Shop.Log;

/// <summary>What the log needs to know of a run, from the run as planned.</summary>
internal static class LoggedRuns
{
    /// <summary>The run for the log; times as they were reckoned before the log corrected them.</summary>
    public static LoggedRun Of(Laydown.Plan.Runs.Run run, double thickestMm)
    {
        RunTime time = run.Time;
        double learnt = time.LearntFactor ?? 1;
        int sheets = Math.Max(1, run.SheetCount);
        return new(
            run.Id, run.PressId, run.Mode.ModeId, run.StockId, run.Due, sheets, time.SetUpMinutes / learnt, (time.PrintMinutes + time.HandlingMinutes) / learnt,
            run.Inks.Sum(i => i.SetUpMl), run.Inks.Sum(i => i.PrintedMl), run.Sheets.Sum(s => s.Repeats * s.Sheet.AreaM2) / sheets,
            run.Sheets.Sum(s => s.Repeats * PiecesM2(s)) / sheets, thickestMm, [.. run.Items.Select(i => i.ItemId)]);
    }

    private static double PiecesM2(SheetLayout sheet) => sheet.Placements.Sum(p => p.Place.Size.AreaM2);
}
