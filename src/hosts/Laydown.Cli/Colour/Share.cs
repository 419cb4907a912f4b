using Laydown.Cli.Words;

namespace Laydown.Cli.Colour;

/// <summary>Tells on the error stream how far long work is: a line for each tenth.</summary>
internal sealed class Share(Answer answer, string what) : IProgress<double>
{
    private readonly Lock gate = new();
    private int told;

    /// <inheritdoc/>
    public void Report(double value)
    {
        if (answer.AsJson)
            return;
        lock (gate)
        {
            int tenth = (int)(value * 10);
            if (tenth <= told)
                return;
            told = tenth;
            answer.Error.WriteLine(Invariant($"{what}  {tenth * 10,3} %"));
        }
    }
}
