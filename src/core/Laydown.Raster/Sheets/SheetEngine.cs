using System.Runtime.ExceptionServices;
using Laydown.Measures;
using Laydown.Raster.Scaling;

namespace Laydown.Raster.Sheets;

/// <summary>Makes the dots of one layer of a sheet: plates, colour, scaling, masks, pieces, screen, in one go and never whole in memory.</summary>
/// <remarks>
/// The sheet is cut into bands of a fixed height; workers take one band after the other, from the top, and cut it into tiles that stay in the
/// processor's cache. The dots depend on the job alone: number of workers, order of bands and cut of tiles do not show in them. Memory is
/// bounded by <see cref="MostBytes"/> whatever the length of the sheet and the number of pieces.
/// </remarks>
public sealed class SheetEngine
{
    private const int FarReach = 32, LowBand = 128, HighBand = 256, UsualTileColumns = 2048, ValueBytes = 2;

    private readonly SheetJob job;
    private readonly int workers, tileColumns;
    private readonly IReadOnlyList<(AxisScale Rows, AxisScale Columns)?> scales;

    /// <summary>An engine for a job.</summary>
    /// <param name="job">What is to be made.</param>
    /// <param name="workers">How many bands are made at once, 1 to 256.</param>
    /// <exception cref="ArgumentException">The screen's grid does not divide a tile.</exception>
    public SheetEngine(SheetJob job, int workers)
        : this(job, workers, ReachOf(job) > FarReach ? HighBand : LowBand, UsualTileColumns)
    {
    }

    /// <summary>An engine with bands and tiles of another size; the dots are the same.</summary>
    internal SheetEngine(SheetJob job, int workers, int bandRows, int tileColumns)
    {
        this.job = job;
        this.workers = Bounds.Within(workers, 1, 256);
        this.tileColumns = Bounds.Within(tileColumns, 1, int.MaxValue);
        BandRows = Bounds.Within(bandRows, 1, 65_536);
        int grid = job.Screen.GridPixels;
        if (grid < 1 || bandRows % grid != 0 || tileColumns % grid != 0)
            throw new ArgumentException(Invariant($"Screen: found a grid of {grid} pixels; wanted a divisor of {bandRows} and {tileColumns}."), nameof(job));
        Bands = ((job.Rows - 1) / BandRows) + 1;
        scales = [.. job.Pictures.Select(ScaleOf)];
    }

    /// <summary>How many bands.</summary>
    public int Bands { get; }

    /// <summary>Rows of a band; the last may have fewer.</summary>
    public int BandRows { get; }

    /// <summary>Most memory the work holds at once, bytes, besides the tables of colours and weights.</summary>
    /// <remarks>
    /// For each worker: dots of a band, inks × band rows × bits × columns / 8; and tiles of t = (band rows + 2 reach) × (tile columns + 2 reach) values of
    /// 2 bytes: as many as the inks of the sheet, of the plates, and four times the most planes between stages.
    /// </remarks>
    public long MostBytes
    {
        get
        {
            int reach = Math.Max(ReachOf(job), job.Screen.ReachPixels);
            long tile = (BandRows + (2L * reach)) * (Math.Min(tileColumns, job.Columns) + (2L * reach)) * ValueBytes;
            int planes = job.Pictures.Select(p => Math.Max(p.Plates.Inks, p.Inks)).DefaultIfEmpty(1).Max();
            long dots = (long)job.Screen.Inks * BandRows * ((((long)job.Columns * job.Screen.BitsPerDot) + 7) / 8);
            return workers * (dots + (tile * (job.Screen.Inks + (5L * planes))));
        }
    }

    /// <summary>Makes all bands that the sink does not have.</summary>
    /// <param name="sink">Takes the bands.</param>
    /// <param name="done">Told how many bands are finished, those the sink had included; from several threads, never at once.</param>
    /// <param name="cancellation">Looked at before each tile.</param>
    /// <returns>Dots counted in the bands that were made.</returns>
    /// <exception cref="OperationCanceledException">Cancelled; bands taken so far are whole.</exception>
    public DotTotals Run(IDotSink sink, Action<int>? done, CancellationToken cancellation)
    {
        DotTotals all = new(job.Screen.Inks, 1 << job.Screen.BitsPerDot);
        Lock gate = new();
        int next = 0, finished = 0;
        using CancellationTokenSource stop = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        void Work()
        {
            SheetWorker? worker = null;
            for (int band = Interlocked.Increment(ref next) - 1; band < Bands; band = Interlocked.Increment(ref next) - 1)
            {
                DotTotals? counted = null;
                if (!sink.Has(band))
                {
                    worker ??= new(job, BandRows, tileColumns, new(job.Pictures, scales));
                    DotBand made = worker.Make(band, band * BandRows, Math.Min(BandRows, job.Rows - (band * BandRows)), stop.Token);
                    sink.Take(made);
                    counted = made.Totals;
                }

                lock (gate)
                {
                    if (counted is not null)
                        all.Add(counted);
                    done?.Invoke(++finished);
                }
            }
        }

        Exception? failure = RunAll(Work, stop);
        cancellation.ThrowIfCancellationRequested();
        if (failure is not null)
            ExceptionDispatchInfo.Throw(failure);
        return all;
    }

    // The first worker that fails stops the others; its failure is the one that is told.
    private Exception? RunAll(Action work, CancellationTokenSource stop)
    {
        Exception? first = null;
        Task[] tasks = [.. Enumerable.Range(0, Math.Min(workers, Bands)).Select(_ => Task.Factory.StartNew(
            () =>
            {
                try
                {
                    work();
                }
                catch (Exception failure)
                {
                    Interlocked.CompareExchange(ref first, failure, null);
                    stop.Cancel();
                }
            },
            CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default))];
        Task.WaitAll(tasks, CancellationToken.None);
        return first;
    }

    // A high band spares the rows that far-reaching masks look at above and below it.
    private static int ReachOf(SheetJob job) => job.Pictures.Select(p => p.PressReach).DefaultIfEmpty(0).Max();

    private static (AxisScale Rows, AxisScale Columns)? ScaleOf(SheetPicture picture) =>
        picture.Plates.Rows == picture.Rows && picture.Plates.Columns == picture.Columns
            ? null
            : (new(picture.Plates.Rows, picture.Rows, picture.Kernel), new(picture.Plates.Columns, picture.Columns, picture.Kernel));
}
