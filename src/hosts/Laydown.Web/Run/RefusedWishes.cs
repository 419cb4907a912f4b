using System.Collections.Concurrent;
using Laydown.Measures;

namespace Laydown.Web.Run;

/// <summary>The last wish for each run that was refused, so that the page can show what was typed and what spoke against it.</summary>
/// <typeparam name="T">What is wished.</typeparam>
public sealed class RefusedWishes<T>
{
    private readonly ConcurrentDictionary<string, (T Typed, IReadOnlyList<InputFault> Faults)> refused = new(StringComparer.Ordinal);

    /// <summary>What was typed and refused for a run; null where nothing was.</summary>
    public (T Typed, IReadOnlyList<InputFault> Faults)? Refused(string runId) => refused.TryGetValue(runId, out var last) ? last : null;

    /// <summary>Keeps a wish.</summary>
    public void Keep(string runId, T typed, IReadOnlyList<InputFault> faults) => refused[runId] = (typed, faults);

    /// <summary>Forgets it.</summary>
    public void Clear(string runId) => refused.TryRemove(runId, out _);
}
