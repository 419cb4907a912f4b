using System.Collections.Concurrent;
using Laydown.Measures;
using Laydown.Plan.Runs;

namespace Laydown.Web.Run;

/// <summary>Last attempt to let a run go that was refused, so that the page can show what was typed and what spoke against it.</summary>
public sealed class ReleaseDesk
{
    private readonly ConcurrentDictionary<string, (MeasuredSheet Typed, IReadOnlyList<InputFault> Faults)> refused = new(StringComparer.Ordinal);

    /// <summary>What was typed and refused for a run; null where nothing was.</summary>
    public (MeasuredSheet Typed, IReadOnlyList<InputFault> Faults)? Refused(string runId) => refused.TryGetValue(runId, out var last) ? last : null;

    /// <summary>Keeps an attempt.</summary>
    public void Keep(string runId, MeasuredSheet typed, IReadOnlyList<InputFault> faults) => refused[runId] = (typed, faults);

    /// <summary>Forgets it.</summary>
    public void Clear(string runId) => refused.TryRemove(runId, out _);
}
