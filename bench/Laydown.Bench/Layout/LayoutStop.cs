using System.Diagnostics;

namespace Laydown.Bench.Layout;

/// <summary>Asks for the stop of a search when its time is over: by wall time, or by processor time where other work shares the machine.</summary>
internal sealed class LayoutStop : IDisposable
{
    private const int LookMs = 5;

    private readonly CancellationTokenSource source;
    private readonly Timer? timer;

    public LayoutStop(double seconds, bool byProcessor, int workers, CancellationToken cancellation)
    {
        source = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        if (!byProcessor)
        {
            source.CancelAfter(TimeSpan.FromSeconds(seconds));
            return;
        }

        TimeSpan end = CpuNow() + TimeSpan.FromSeconds(seconds * workers);
        timer = new(_ =>
        {
            if (CpuNow() >= end)
                source.Cancel();
        }, null, LookMs, LookMs);
    }

    /// <summary>The stop.</summary>
    public CancellationToken Token => source.Token;

    /// <summary>Processor time of this process.</summary>
    public static TimeSpan CpuNow()
    {
        using Process self = Process.GetCurrentProcess();
        return self.TotalProcessorTime;
    }

    public void Dispose()
    {
        timer?.Dispose();
        source.Dispose();
    }
}
