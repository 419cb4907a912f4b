using Laydown.Plan.Log;
using Laydown.Plan.Upkeep;
using Laydown.Press.Machines;

namespace Laydown.Shop.Press;

/// <summary>A press as it stands: as written down, with levels and runs that the log knows of later.</summary>
internal static class PressStates
{
    /// <summary>The press as it stands; a run that the log says is done moved the ink when it ended.</summary>
    /// <param name="press">The press.</param>
    /// <param name="written">What was written down of it; null where nothing was.</param>
    /// <param name="printed">What was printed lately, on any press.</param>
    /// <param name="from">Start of the time planned.</param>
    /// <param name="levels">Knows levels that the log holds, too; null where the book alone tells them.</param>
    /// <param name="cancellation">Ends the work.</param>
    public static async Task<PressState> OfAsync(
        PressDescription press, PressState? written, IReadOnlyList<RunActual> printed, DateTimeOffset from, TankLevels? levels, CancellationToken cancellation)
    {
        PressState state = written ?? new(press.Id, from, [], []);
        DateTimeOffset? ended = printed.Where(a => a.PressId == press.Id && a.Ended <= from).Select(a => (DateTimeOffset?)a.Ended).Max();
        if (ended is { } last && (written is null || last > (state.LastUsed ?? state.At)))
            state = state with { At = last > state.At ? last : state.At, LastUsed = last };
        if (levels is null)
            return state;
        IReadOnlyList<ReadTank> read = await levels.OfAsync(press, cancellation);
        return state with
        {
            Tanks = [.. read.Select(r => (state.Tanks.FirstOrDefault(t => t.TankId == r.TankId) ?? new(r.TankId, r.LevelMl)) with { LevelMl = r.LevelMl, ReadAt = r.At })],
        };
    }
}
