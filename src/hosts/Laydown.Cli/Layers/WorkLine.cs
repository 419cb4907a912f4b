using Laydown.Cli.Words;

namespace Laydown.Cli.Layers;

/// <summary>Tells how far long work is: one line drawn over itself on a terminal, a line for each tenth otherwise, nothing beside JSON.</summary>
internal sealed class WorkLine(Answer answer, string what) : IProgress<double>, IDisposable
{
    private readonly Lock gate = new();
    private int told = -1;

    /// <inheritdoc/>
    public void Report(double value)
    {
        if (answer.AsJson)
            return;
        lock (gate)
        {
            int percent = (int)(100 * Math.Clamp(value, 0, 1)), step = answer.CanDraw ? percent : percent / 10;
            if (step <= told)
                return;
            told = step;
            if (answer.CanDraw)
                answer.Error.Write(Invariant($"\r{what}  {percent,3} %"));
            else
                answer.Error.WriteLine(Invariant($"{what}  {step * 10,3} %"));
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        lock (gate)
        {
            if (told >= 0 && answer.CanDraw)
                answer.Error.WriteLine();
        }
    }
}
