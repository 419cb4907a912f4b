using System.Collections.Concurrent;
using Laydown.Measures;
using Laydown.Plan.Runs;

namespace Laydown.Web.Run;

/// <summary>Last mode that somebody wanted for a run and did not get, so that the page can show what was typed and what spoke against it.</summary>
public sealed class ModeDesk
{
    private readonly ConcurrentDictionary<string, (ModeOverrule Typed, IReadOnlyList<InputFault> Faults)> refused = new(StringComparer.Ordinal);

    /// <summary>What was wanted and refused for a run; null where nothing was.</summary>
    public (ModeOverrule Typed, IReadOnlyList<InputFault> Faults)? Refused(string runId) => refused.TryGetValue(runId, out var last) ? last : null;

    /// <summary>Keeps a wish.</summary>
    public void Keep(string runId, ModeOverrule typed, IReadOnlyList<InputFault> faults) => refused[runId] = (typed, faults);

    /// <summary>Forgets it.</summary>
    public void Clear(string runId) => refused.TryRemove(runId, out _);
}
