using Laydown.Cli.Words;
using Laydown.Shop.Week;

namespace Laydown.Cli.Week;

/// <summary>Says on the way which press a run is tried on; beside the results, so that those can be read by programs.</summary>
/// <param name="answer">How to answer.</param>
internal sealed class TriedPresses(Answer answer) : IProgress<WeekTrying>
{
    /// <inheritdoc/>
    public void Report(WeekTrying value) => answer.Error.WriteLine(value.PressId is { } press
        ? Invariant($"Trying {value.RunId} on {press}, {value.Done + 1} of {value.All} (Ctrl-C leaves everything as it is).")
        : Invariant($"Trying {value.RunId} on other presses, late run {value.Done + 1} of {value.All} (Ctrl-C leaves everything as it is)."));
}
