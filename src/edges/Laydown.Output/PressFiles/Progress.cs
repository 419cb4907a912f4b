using Laydown.Shop.Run;

namespace Laydown.Output.PressFiles;

/// <summary>Tells how far a run is; never less than before, 100 only at the end.</summary>
internal sealed class Progress(string runId, IProgress<MakeProgress> listener)
{
    private double furthest;

    /// <summary>Tells a step and how much of the whole is done, percent.</summary>
    public void Tell(string step, double donePercent)
    {
        furthest = Math.Max(furthest, Math.Clamp(donePercent, 0, 100));
        listener.Report(new MakeProgress(runId, step, furthest));
    }
}
