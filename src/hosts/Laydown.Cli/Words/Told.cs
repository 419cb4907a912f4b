using Laydown.Shop.Run;
using Spectre.Console;

namespace Laydown.Cli.Words;

/// <summary>Shows how far work is: bars on a terminal, plain lines otherwise, nothing beside JSON.</summary>
internal static class Told
{
    /// <summary>Does the work and shows the stations of the day and the runs being made meanwhile.</summary>
    public static async Task<T> WhileAsync<T>(
        Answer answer, ProgressBoard board, Func<IProgress<DayStation>, Task<T>> work, CancellationToken cancellation)
    {
        if (answer.AsJson)
            return await work(new Listener<DayStation>(_ => { }));
        if (!answer.CanDraw)
            return await PlainlyAsync(answer, board, work, cancellation);
        return await AnsiConsole.Progress().AutoClear(false).HideCompleted(false)
            .Columns(new TaskDescriptionColumn { Alignment = Justify.Left }, new ProgressBarColumn(), new PercentageColumn(), new ElapsedTimeColumn())
            .StartAsync(context => DrawnAsync(context, board, work, cancellation));
    }

    private static async Task<T> PlainlyAsync<T>(
        Answer answer, ProgressBoard board, Func<IProgress<DayStation>, Task<T>> work, CancellationToken cancellation)
    {
        HashSet<string> said = [];
        return await BesideAsync(board, Say, work, Station, cancellation);

        void Say(MakeProgress progress)
        {
            // A line for each quarter of a run is enough for a log.
            int quarter = (int)(progress.DonePercent / 25) * 25;
            if (said.Add(Invariant($"{progress.RunId} {quarter}")))
                answer.Error.WriteLine(Invariant($"{progress.RunId}  {progress.DonePercent,3:0} %  {progress.Step}"));
        }

        void Station(DayStation station)
        {
            if (station.Done)
                answer.Error.WriteLine(Invariant($"{station.Name}  {station.Seconds:0.0} s  {station.Result}"));
        }
    }

    private static async Task<T> DrawnAsync<T>(
        ProgressContext context, ProgressBoard board, Func<IProgress<DayStation>, Task<T>> work, CancellationToken cancellation)
    {
        Dictionary<string, ProgressTask> bars = [];
        Lock gate = new();
        return await BesideAsync(board, p => Move(p.RunId, Invariant($"  {p.RunId}  {p.Step}"), p.DonePercent), work, Station, cancellation);

        void Station(DayStation station) => Move(
            station.Name, station.Done ? Invariant($"{station.Name}  {station.Result}") : station.Name, station.Done ? 100 : 0);

        void Move(string id, string text, double percent)
        {
            lock (gate)
            {
                if (!bars.TryGetValue(id, out ProgressTask? bar))
                    bars[id] = bar = context.AddTask(Markup.Escape(text));
                bar.Description = Markup.Escape(text);
                bar.Value = percent;
                // The clock of a bar that is full stands still.
                if (percent >= 100)
                    bar.StopTask();
            }
        }
    }

    private static async Task<T> BesideAsync<T>(
        ProgressBoard board, Action<MakeProgress> told, Func<IProgress<DayStation>, Task<T>> work, Action<DayStation> station, CancellationToken cancellation)
    {
        using CancellationTokenSource over = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        Task watching = WatchAsync(board, told, over.Token);
        try
        {
            return await work(new Listener<DayStation>(station));
        }
        finally
        {
            await over.CancelAsync();
            await watching;
        }
    }

    private static async Task WatchAsync(ProgressBoard board, Action<MakeProgress> told, CancellationToken cancellation)
    {
        try
        {
            await foreach (MakeProgress progress in board.WatchAsync(cancellation))
                told(progress);
        }
        catch (OperationCanceledException)
        {
            // The work is over, so there is nothing more to watch.
        }
    }

    // Called at once, unlike Progress<T>, so that lines come in the order of the work.
    private sealed class Listener<T>(Action<T> told) : IProgress<T>
    {
        public void Report(T value) => told(value);
    }
}
