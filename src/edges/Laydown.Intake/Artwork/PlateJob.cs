using Laydown.Measures;

namespace Laydown.Intake.Artwork;

/// <summary>One rendering that runs by itself while others read its rows.</summary>
internal sealed class PlateJob : IAsyncDisposable
{
    private readonly CancellationTokenSource stop;
    private readonly CancellationTokenRegistration waking;
    private readonly ArrivedRows arrived;
    private readonly IDisposable scratch;
    private readonly TaskCompletionSource begun = new(TaskCreationOptions.RunContinuationsAsynchronously);

    /// <summary>Starts the work on another thread.</summary>
    /// <param name="file">Name of the file, for faults.</param>
    /// <param name="page">Page from 1, for faults.</param>
    /// <param name="rows">Rows wanted in the end.</param>
    /// <param name="arrived">Told the rows that are there.</param>
    /// <param name="scratch">Disposed after the work has ended.</param>
    /// <param name="work">Renders, and calls the action when names and sizes are known. Returns its faults.</param>
    /// <param name="cancellation">Ends it.</param>
    public PlateJob(
        string file, int page, int rows, ArrivedRows arrived, IDisposable scratch,
        Func<Action, CancellationToken, Task<IReadOnlyList<InputFault>>> work, CancellationToken cancellation)
    {
        this.scratch = scratch;
        this.arrived = arrived;
        stop = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        waking = stop.Token.Register(arrived.Cancel);
        Ended = Task.Run(() => RunAsync(file, page, rows, work, stop.Token), CancellationToken.None);
    }

    /// <summary>Done when names and sizes are known, or the work has ended without.</summary>
    public Task Begun => begun.Task;

    /// <summary>How it ended.</summary>
    public Task<IReadOnlyList<InputFault>> Ended { get; }

    /// <summary>Ends the work and waits until nothing of it runs any more.</summary>
    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        await ((Task)Ended).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        await waking.DisposeAsync();
        stop.Dispose();
        scratch.Dispose();
    }

    private async Task<IReadOnlyList<InputFault>> RunAsync(
        string file, int page, int rows, Func<Action, CancellationToken, Task<IReadOnlyList<InputFault>>> work, CancellationToken cancellation)
    {
        try
        {
            var faults = await WorkFaults.OfAsync(file, page, () => work(() => begun.TrySetResult(), cancellation));
            cancellation.ThrowIfCancellationRequested();
            if (faults.Count == 0 && arrived.Count < rows)
                faults = [new(file, page, "rows", Invariant($"{arrived.Count} rows rendered"), Invariant($"{rows} rows"))];
            if (faults.Count > 0)
                arrived.Fail(faults);
            return faults;
        }
        catch (Exception failure)
        {
            // A cancelled reader is told so; any other failure here is a mistake of ours, and is told as what it is.
            if (failure is OperationCanceledException)
                arrived.Cancel();
            else
                arrived.Fail([new(file, page, "rendering", failure.Message, "a rendering that ends")]);
            throw;
        }
        finally
        {
            begun.TrySetResult();
        }
    }
}
