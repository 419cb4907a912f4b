using Laydown.Formats.TiffWriting;
using Laydown.Measures;
using Laydown.Output.PressFiles;
using Laydown.Press.Machines;
using Laydown.Raster.Tiles;
using Laydown.Shop.Artwork;
using Laydown.Shop.Run;

namespace Laydown.Edges.Tests.PressFiles;

/// <summary>Stands in for rendering: the painter's plates, open for reading at once.</summary>
internal sealed class PaintedStream(Painter painter) : IPlateStream
{
    /// <summary>Called with each row before it is read.</summary>
    public Action<int> Reading { get; init; } = _ => { };

    /// <summary>What rendering ends with.</summary>
    public IReadOnlyList<InputFault> Ends { get; init; } = [];

    public async Task<Reading<OpenPlates>> OpenAsync(RenderRequest request, CancellationToken cancellation)
    {
        Reading<RenderedPage> page;
        lock (painter)
            page = painter.RenderAsync(request, cancellation).GetAwaiter().GetResult();
        await Task.Yield();
        return page.Then(p =>
        {
            Held held = new(new PlatePictureOf(p), Reading);
            return Measures.Reading.Of(new OpenPlates(p.Plates, held, Task.FromResult(Ends), () =>
            {
                p.Dispose();
                return ValueTask.CompletedTask;
            }));
        });
    }

    private sealed class Held(ITileSource source, Action<int> reading) : ITileSource
    {
        public int Inks => source.Inks;

        public int Rows => source.Rows;

        public int Columns => source.Columns;

        public void ReadRow(int ink, int row, int firstColumn, Span<ushort> into)
        {
            reading(row);
            source.ReadRow(ink, row, firstColumn, into);
        }
    }

    private sealed class PlatePictureOf(RenderedPage page) : ITileSource
    {
        private readonly byte[] bytes = File.ReadAllBytes(page.RawPath);

        public int Inks => page.Plates.Count;

        public int Rows => page.Height;

        public int Columns => page.Width;

        public void ReadRow(int ink, int row, int firstColumn, Span<ushort> into)
        {
            for (int x = 0; x < into.Length; x++)
                into[x] = (ushort)(257 * bytes[(((ink * Rows) + row) * Columns) + firstColumn + x]);
        }
    }
}

/// <summary>Makes dots of a run of <see cref="World"/> in the folders of a <see cref="Bench"/>.</summary>
internal static class DotBench
{
    public static readonly DotsWish Wish = new(null, DotCompression.None, false);

    /// <summary>The run in a mode of that many dots per inch, contone made at <paramref name="ppi"/>.</summary>
    public static RunContext In(RunContext run, int scanDpi, int feedDpi, int ppi, params double[] dropsPl)
    {
        Mode mode = run.Mode with { ScanDpi = scanDpi, FeedDpi = feedDpi, ContonePpi = ppi, DropsPl = dropsPl };
        return run with { Mode = mode, Press = run.Press with { Modes = [mode] } };
    }

    public static DotFiles Maker(this Bench bench, IPlateStream stream, int workers = 3, long? free = null) =>
        new(stream, TimeProvider.System, bench.Scratch) { Workers = workers, FreeBytes = folder => free ?? 100L << 30 };

    public static async Task<Reading<IReadOnlyList<ManifestEntry>>> DotsAsync(
        this Bench bench, DotFiles maker, RunContext run, IReadOnlyList<ManifestEntry> files, DotsWish? wish = null, Listener? listener = null,
        CancellationToken cancellation = default) =>
        await maker.MakeAsync(run, wish ?? Wish, bench.Runs, files, listener ?? new(), cancellation);

    /// <summary>Codes of a dot file.</summary>
    public static byte[,] Codes(string path)
    {
        using DotTiffReader reader = DotTiffReader.Open(path).Value;
        byte[,] codes = new byte[reader.Rows, reader.Columns];
        byte[] row = new byte[reader.BytesFor(reader.Columns)];
        for (int y = 0; y < reader.Rows; y++)
        {
            reader.ReadRow(y, 0, reader.Columns, row);
            for (int x = 0; x < reader.Columns; x++)
                codes[y, x] = (byte)((row[x * reader.BitsPerDot >> 3] >> (8 - reader.BitsPerDot - (x * reader.BitsPerDot & 7))) & ((1 << reader.BitsPerDot) - 1));
        }

        return codes;
    }
}
