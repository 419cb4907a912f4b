using System.Runtime.ExceptionServices;

namespace Laydown.Output.PressFiles;

/// <summary>Hands numbered work out to all cores in ascending order, so that a source which is still growing is read from its start.</summary>
internal static class AllCores
{
    /// <summary>Does all the work; the first failure stops what has not begun and is thrown as it came.</summary>
    /// <param name="count">Work is numbered from 0.</param>
    /// <param name="scratch">What one worker keeps to itself.</param>
    /// <param name="work">Does one number.</param>
    /// <param name="cancellation">Looked at before each number.</param>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public static void Run<TScratch>(int count, Func<TScratch> scratch, Action<int, TScratch> work, CancellationToken cancellation)
    {
        int next = -1;
        ExceptionDispatchInfo? failure = null;
        Task[] others = [.. Enumerable.Range(1, Math.Max(0, Math.Min(count, Environment.ProcessorCount) - 1)).Select(_ => Task.Run(Work, CancellationToken.None))];
        Work();
        Task.WaitAll(others, CancellationToken.None);
        failure?.Throw();

        void Work()
        {
            try
            {
                TScratch own = scratch();
                while (Volatile.Read(ref failure) is null && Interlocked.Increment(ref next) is int number && number < count)
                {
                    cancellation.ThrowIfCancellationRequested();
                    work(number, own);
                }
            }
            catch (Exception e)
            {
                Interlocked.CompareExchange(ref failure, ExceptionDispatchInfo.Capture(e), null);
            }
        }
    }

    /// <summary>Runs stages over a whole picture in bands of its full width; the same bytes for any number of cores.</summary>
    /// <param name="source">The picture; read from several threads.</param>
    /// <param name="recipe">Its stages.</param>
    /// <param name="bandRows">Rows of a band.</param>
    /// <param name="sink">Takes the bands, from several threads, in any order.</param>
    /// <param name="cancellation">Looked at before each band.</param>
    public static void RunBands(Raster.Tiles.ITileSource source, LayerRecipe recipe, int bandRows, Raster.Tiles.ITileSink sink, CancellationToken cancellation) => Run(
        ((source.Rows - 1) / bandRows) + 1,
        recipe.Chain,
        (band, chain) =>
        {
            int first = band * bandRows;
            sink.Take(first, 0, chain.RunTile(source, first, 0, Math.Min(bandRows, source.Rows - first), source.Columns));
        },
        cancellation);
}
