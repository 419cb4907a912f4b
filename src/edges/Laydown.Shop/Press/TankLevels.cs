using Laydown.Plan.Log;
using Laydown.Press.Machines;
using Laydown.Shop.Log;

namespace Laydown.Shop.Press;

/// <summary>How full the tanks of a press are: as last read at the press or in the log, whichever came later; else as the press's description says.</summary>
/// <param name="book">What was read at the presses.</param>
/// <param name="log">The log, whose ink readings count too; null where the shop keeps none.</param>
public sealed class TankLevels(IPressCareBook book, ILogStore? log = null)
{
    // Readings of the log that are looked through: some years of all tanks of a press.
    private const int MostReadings = 2000;

    /// <summary>Every tank of a press, in its order.</summary>
    /// <param name="press">The press as described.</param>
    /// <param name="cancellation">Stops reading.</param>
    public async Task<IReadOnlyList<ReadTank>> OfAsync(PressDescription press, CancellationToken cancellation)
    {
        PressCarePage? page = await book.ReadAsync(press.Id, cancellation);
        IReadOnlyList<LogEntry> logged = log is null ? [] : await log.LastAsync(LogKind.Ink, new LogSpan(press.Id), MostReadings, cancellation);
        return [.. press.Tanks.Select(tank => Last(tank, page, logged))];
    }

    /// <summary>The press with its tanks as they were last read.</summary>
    /// <param name="press">The press as described.</param>
    /// <param name="cancellation">Stops reading.</param>
    public async Task<PressDescription> AsReadAsync(PressDescription press, CancellationToken cancellation) => With(press, await OfAsync(press, cancellation));

    /// <summary>The press with these levels.</summary>
    /// <param name="press">The press as described.</param>
    /// <param name="read">Every tank of it, in its order.</param>
    public static PressDescription With(PressDescription press, IReadOnlyList<ReadTank> read)
    {
        ArgumentNullException.ThrowIfNull(press);
        return press with { Tanks = [.. press.Tanks.Zip(read, (tank, now) => tank with { LevelMl = now.LevelMl })] };
    }

    // A tank was perhaps changed for a smaller one since: no level stands over what it holds.
    private static ReadTank Last(Tank tank, PressCarePage? page, IReadOnlyList<LogEntry> logged)
    {
        ReadTank inBook = page?.State.Tanks.FirstOrDefault(t => t.TankId == tank.Id) is { } read
            ? new(tank.Id, Math.Min(tank.CapacityMl, read.LevelMl), read.ReadAt ?? page.State.At)
            : new(tank.Id, tank.LevelMl, null);
        return logged.LastOrDefault(e => e.Ink?.TankId == tank.Id) is { Ink: { } ink } entry && !(entry.At < inBook.At)
            ? new(tank.Id, Math.Min(tank.CapacityMl, ink.LevelMl), entry.At)
            : inBook;
    }
}
