using Laydown.Shop.Run;

namespace Laydown.Output.PressFiles;

/// <summary>Tells how far a run is; never less than before, 100 only at the end. From several threads.</summary>
internal sealed class Progress(string runId, IProgress<MakeProgress> listener)
{
    private readonly Lock gate = new();
    private double furthest;

    /// <summary>Tells a step and how much of the whole is done, percent.</summary>
    /// <param name="step">What is being done, in words.</param>
    /// <param name="donePercent">Done of the whole, percent.</param>
    /// <param name="secondsLeft">Time that is left, s, where it is known.</param>
    public void Tell(string step, double donePercent, double? secondsLeft = null)
    {
        lock (gate)
        {
            furthest = Math.Max(furthest, Math.Clamp(donePercent, 0, 100));
            listener.Report(new MakeProgress(runId, step, furthest) { SecondsLeft = secondsLeft });
        }
    }
}
