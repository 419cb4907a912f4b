using Laydown.Formats.Pdf;
using Laydown.Measures;

namespace Laydown.Intake.Artwork;

/// <summary>Reads a PDF on a thread of its own with a time limit: the parser cannot be interrupted.</summary>
internal static class PdfReading
{
    private const int StackBytes = 64 << 20;

    /// <summary>The part of the limits that the reader of PDF knows.</summary>
    public static PdfLimits Limits(IntakeLimits limits) => new(limits.Pages, limits.Operations, limits.SideMm);

    /// <summary>The PDF as measured, or why it cannot be taken.</summary>
    public static async Task<Reading<PdfContent>> ReadAsync(string path, IntakeLimits limits, CancellationToken cancellation)
    {
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        var done = new TaskCompletionSource<Reading<PdfContent>>(TaskCreationOptions.RunContinuationsAsynchronously);
        var token = stop.Token;
        var thread = new Thread(() => Run(path, limits, done, token), StackBytes) { IsBackground = true, Name = "PDF reading" };
        thread.Start();
        try
        {
            return await done.Task.WaitAsync(TimeSpan.FromSeconds(limits.ChildSeconds), cancellation);
        }
        catch (TimeoutException)
        {
            await stop.CancelAsync();
            return Reading.Refused<PdfContent>(new InputFault(
                Path.GetFileName(path), null, "time to read", Invariant($"more than {limits.ChildSeconds} s"), Invariant($"at most {limits.ChildSeconds} s")));
        }
    }

    private static void Run(string path, IntakeLimits limits, TaskCompletionSource<Reading<PdfContent>> done, CancellationToken cancellation)
    {
        try
        {
            done.SetResult(PdfReader.Read(path, Limits(limits), cancellation));
        }
        catch (OperationCanceledException)
        {
            done.SetCanceled(cancellation);
        }
        catch (Exception failure)
        {
            done.SetException(failure);
        }
    }
}
