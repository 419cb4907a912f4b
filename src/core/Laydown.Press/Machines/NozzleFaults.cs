using Laydown.Measures;

namespace Laydown.Press.Machines;

/// <summary>What in the state of nozzles, the placement and the feather of a press cannot be.</summary>
public static class NozzleFaults
{
    /// <summary>Every fault, each with its JSON path.</summary>
    /// <param name="press">The press as read.</param>
    /// <param name="file">File it came from.</param>
    public static IReadOnlyList<InputFault> Of(PressDescription press, string file) =>
        [
            .. (press.NozzleStates ?? []).Index().SelectMany(s => OfState(press, s.Item, file, Invariant($"/nozzleStates/{s.Index}"))),
            .. (press.NozzleStates ?? []).Index().Where(s => press.NozzleStates!.Take(s.Index).Any(o => Is(o.ChannelId, s.Item.ChannelId)))
                .Select(s => new InputFault(file, null, Invariant($"/nozzleStates/{s.Index}/channelId"), s.Item.ChannelId, "each channel once")),
            .. press.Modes.Index().SelectMany(m => OfFeather(m.Item, file, Invariant($"/modes/{m.Index}/featherNozzles"))),
        ];

    private static IEnumerable<InputFault> OfState(PressDescription press, NozzleState state, string file, string path)
    {
        if (press.Channels.FirstOrDefault(c => Is(c.Id, state.ChannelId)) is not { } channel)
        {
            yield return new(file, null, path + "/channelId", state.ChannelId, "the id of a channel of this press");
            yield break;
        }

        string wanted = Invariant($"0 to {channel.Nozzles - 1}, the nozzles of channel {channel.Id}");
        foreach ((int i, int nozzle) in state.Missing.Index())
        {
            if (nozzle < 0 || nozzle >= channel.Nozzles)
                yield return new(file, null, Invariant($"{path}/missing/{i}"), Invariant($"nozzle {nozzle}"), wanted);
            else if (state.Missing.Take(i).Contains(nozzle))
                yield return new(file, null, Invariant($"{path}/missing/{i}"), Invariant($"nozzle {nozzle} again"), "each nozzle once");
        }

        foreach ((int i, SlantedNozzle slanted) in state.Slanted.Index())
        {
            string at = Invariant($"{path}/slanted/{i}/nozzle");
            if (slanted.Nozzle < 0 || slanted.Nozzle >= channel.Nozzles)
                yield return new(file, null, at, Invariant($"nozzle {slanted.Nozzle}"), wanted);
            else if (state.Missing.Contains(slanted.Nozzle))
                yield return new(file, null, at, Invariant($"nozzle {slanted.Nozzle}, which is missing"), "a nozzle that fires");
            else if (state.Slanted.Take(i).Any(s => s.Nozzle == slanted.Nozzle))
                yield return new(file, null, at, Invariant($"nozzle {slanted.Nozzle} again"), "each nozzle once");
        }
    }

    private static IEnumerable<InputFault> OfFeather(Mode mode, string file, string path)
    {
        if (mode.FeatherNozzles is { } feather && (feather < 0 || feather > (mode.Passes > 1 ? mode.FeedRows : 0)))
            yield return new(file, null, path, Invariant($"{feather} nozzles"),
                mode.Passes > 1 ? Invariant($"0 to {mode.FeedRows}, the feed in rows") : "none: a single pass has nothing to fade into");
    }

    private static bool Is(string one, string other) => string.Equals(one, other, StringComparison.Ordinal);
}
