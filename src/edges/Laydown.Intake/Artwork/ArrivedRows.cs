using Laydown.Measures;

namespace Laydown.Intake.Artwork;

/// <summary>How many rows of a picture are there so far; readers of later rows wait for them.</summary>
internal sealed class ArrivedRows
{
    private readonly object gate = new();
    private int count;
    private volatile bool over;
    private IReadOnlyList<InputFault>? faults;

    /// <summary>Rows that are there, from the top.</summary>
    public int Count => Volatile.Read(ref count);

    /// <summary>Tells that there are now so many rows; fewer than before changes nothing.</summary>
    public void Grow(int rows)
    {
        lock (gate)
        {
            count = Math.Max(count, rows);
            Monitor.PulseAll(gate);
        }
    }

    /// <summary>No more rows come, because of these faults; every reader is told, also of rows that were there.</summary>
    public void Fail(IReadOnlyList<InputFault> why) => End(why);

    /// <summary>No more rows come, because it was cancelled.</summary>
    public void Cancel() => End(null);

    /// <summary>Returns once the row is there.</summary>
    /// <exception cref="InvalidDataException">The rendering failed.</exception>
    /// <exception cref="OperationCanceledException">The rendering was cancelled.</exception>
    public void WaitFor(int row)
    {
        if (!over && Count > row)
            return;
        lock (gate)
        {
            while (!over && count <= row)
                Monitor.Wait(gate);
        }

        if (!over)
            return;
        throw faults is null ? new OperationCanceledException("The rendering was cancelled.") : new InvalidDataException(string.Join("; ", faults));
    }

    private void End(IReadOnlyList<InputFault>? why)
    {
        lock (gate)
        {
            if (!over)
                faults = why;
            over = true;
            Monitor.PulseAll(gate);
        }
    }
}
