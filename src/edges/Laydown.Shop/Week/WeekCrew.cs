using Laydown.Plan.Calendar;
using Laydown.Plan.Runs;
using Laydown.Plan.StockRoom;
using Laydown.Press.Stocks;

namespace Laydown.Shop.Week;

/// <summary>Whether there are people enough to lift what a run is printed on, where it stands in the week.</summary>
/// <remarks>From which mass and area two people lift: <see cref="Cautions"/>.</remarks>
internal static class WeekCrew
{
    /// <summary>When a run whose sheets take two people lies in hours that one works alone, and what would do instead; null where there are enough.</summary>
    /// <param name="run">The run.</param>
    /// <param name="stocks">The shop's stocks.</param>
    /// <param name="times">When its press is worked, by how many.</param>
    /// <param name="from">When its set-up begins.</param>
    /// <param name="to">When it is printed.</param>
    /// <param name="until">How far ahead two are looked for.</param>
    internal static string? Words(Laydown.Plan.Runs.Run run, IReadOnlyList<Stock> stocks, OpenTimes times, DateTimeOffset from, DateTimeOffset to, DateTimeOffset until)
    {
        Stock? heavy = StockPicks.StockIds(run).Select(id => stocks.FirstOrDefault(s => string.Equals(s.Id, id, StringComparison.Ordinal))).OfType<Stock>()
            .FirstOrDefault(s => s.Kind != StockKind.Roll && Cautions.NeedsTwo(s, SetUps.SheetMassKg(s)));
        if (heavy is null || times.Between(from, to, run.PressId).FirstOrDefault(s => s.Crew < 2) is not { } alone)
            return null;
        string next = times.Between(to, until, run.PressId).FirstOrDefault(s => s.Crew > 1) is { } two
            ? Invariant($"put the run into hours of two, next from {Time(two.Start)}, or call a second person")
            : "call a second person; the calendar knows no hours of two";
        return Invariant($"Sheets of {SetUps.SheetMassKg(heavy):0.0} kg and {heavy.Size.AreaM2:0.0} m² take two people, and one works alone from {Time(alone.Start)} to {Time(alone.End)}: {next}.");
    }

    private static string Time(DateTimeOffset at) => at.ToString("ddd d MMM HH:mm", System.Globalization.CultureInfo.InvariantCulture);
}
