using Laydown.Measures;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Shop.Colour;
using Laydown.Shop.Orders;

namespace Laydown.Web.Tests.Sample;

/// <summary>An ink that is never measured to the end: who asks waits until it leaves.</summary>
internal sealed class HeldInk : IInkMeasure
{
    private readonly TaskCompletionSource begun = new(TaskCreationOptions.RunContinuationsAsynchronously), left = new(TaskCreationOptions.RunContinuationsAsynchronously);

    /// <summary>Done once somebody asked.</summary>
    public Task Begun => begun.Task;

    /// <summary>Done once who asked has left.</summary>
    public Task Left => left.Task;

    public async Task<Reading<IReadOnlyList<LayerInk>>> MeasureAsync(
        ItemRecord item, PrintCondition condition, InkSet inkSet, string profilePath, CancellationToken cancellation)
    {
        begun.TrySetResult();
        try
        {
            await Task.Delay(Timeout.Infinite, cancellation);
        }
        finally
        {
            left.TrySetResult();
        }

        throw new InvalidOperationException("Not reached.");
    }
}
