using Laydown.Cli.Words;
using Laydown.Shop.Run;

namespace Laydown.Cli.Run;

/// <summary>Says on the way what of an order is priced; beside the results, so that those can be read by programs.</summary>
/// <param name="answer">How to answer.</param>
internal sealed class PricedSteps(Answer answer) : IProgress<PricedStep>
{
    /// <inheritdoc/>
    public void Report(PricedStep value) => answer.Error.WriteLine(Invariant($"Pricing {value.OrderId}: {value} (Ctrl-C leaves it)."));
}
