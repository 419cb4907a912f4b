using System.Runtime.InteropServices;
using System.Security.Cryptography;
using Laydown.Raster.Scaling;
using Laydown.Raster.Tiles;
using NetVips;

namespace Laydown.Bench;

/// <summary>Enlarging 3.6 times, as from 200 ppi to 720, beside libvips on the same picture.</summary>
internal static class ScaleBench
{
    private const int Side = 1024, Target = 3686, TileRows = 128, TileColumns = 2048, Runs = 3;

    /// <summary>Runs it.</summary>
    public static IEnumerable<RasterRow> Run(RasterPictures pictures, CancellationToken cancellation)
    {
        ushort[] planes = Planes(pictures.Natural(), pictures.Width);
        foreach (ScaleKernel kernel in new[] { ScaleKernel.CatmullRom, ScaleKernel.Lanczos3 })
        {
            double beside = BesideMpxPerS(pictures, kernel);
            foreach (Lanes lanes in LanesHere.All)
            {
                cancellation.ThrowIfCancellationRequested();
                (double seconds, string sum) = Ours(planes, kernel, lanes);
                yield return new(
                    Invariant($"enlarge 3.6, {kernel}"), Invariant($"RGB 16 bits, {lanes}"), 1e-6 * Target * Target / seconds, "libvips resize, 8 bits, one thread", beside,
                    null, ">= 20 x libvips; RGB pixels", sum);
            }
        }
    }

    private static (double Seconds, string Sum) Ours(ushort[] planes, ScaleKernel kernel, Lanes lanes)
    {
        AxisScale axis = new(Side, Target, kernel);
        Scaler scaler = new(axis, axis, lanes);
        Source source = new(planes);
        Tile from = new(1, 1, 1), to = new(1, 1, 1);
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        void All(Action<Tile>? took)
        {
            for (int top = 0; top < Target; top += TileRows)
            {
                for (int left = 0; left < Target; left += TileColumns)
                {
                    to.Shape(3, Math.Min(TileRows, Target - top), Math.Min(TileColumns, Target - left));
                    to.PlaceAt(top, left);
                    (int row, int high) = axis.SourceRange(top, to.Rows);
                    (int column, int wide) = axis.SourceRange(left, to.Columns);
                    from.Shape(3, high, wide);
                    from.PlaceAt(row, column);
                    SourceTile.Fill(source, from);
                    scaler.Run(from, to);
                    took?.Invoke(to);
                }
            }
        }

        double seconds = double.MaxValue;
        for (int i = 0; i <= Runs; i++)
        {
            double start = ProcessMeter.ThreadSeconds();
            All(null);
            seconds = Math.Min(seconds, ProcessMeter.ThreadSeconds() - start);
        }

        All(tile => hash.AppendData(MemoryMarshal.AsBytes(tile.Row(1, 0))));
        return (seconds, Convert.ToHexStringLower(hash.GetHashAndReset())[..16]);
    }

    // Processor time of the whole process: the library works on threads of its own.
    private static double BesideMpxPerS(RasterPictures pictures, ScaleKernel kernel)
    {
        Cache.Max = 0;
        NetVips.NetVips.Concurrency = 1;
        using Image whole = Image.NewFromMemory(pictures.Natural(), pictures.Width, pictures.Height, 3, Enums.BandFormat.Uchar);
        using Image source = whole.Crop(0, 0, Side, Side).CopyMemory();
        double best = double.MaxValue;
        for (int i = 0; i < Runs; i++)
        {
            double start = ProcessMeter.ProcessSeconds();
            using Image made = source.Resize((double)Target / Side, kernel: kernel == ScaleKernel.CatmullRom ? Enums.Kernel.Cubic : Enums.Kernel.Lanczos3).CopyMemory();
            best = Math.Min(best, ProcessMeter.ProcessSeconds() - start);
        }

        return 1e-6 * Target * Target / best;
    }

    private static ushort[] Planes(byte[] rgb, int width)
    {
        ushort[] planes = new ushort[3 * Side * Side];
        for (int i = 0; i < Side * Side; i++)
        {
            for (int plane = 0; plane < 3; plane++)
                planes[(plane * Side * Side) + i] = (ushort)(rgb[((((i / Side) * width) + (i % Side)) * 3) + plane] * 257);
        }

        return planes;
    }

    private sealed class Source(ushort[] planes) : ITileSource
    {
        public int Inks => 3;

        public int Rows => Side;

        public int Columns => Side;

        public void ReadRow(int ink, int row, int firstColumn, Span<ushort> into) =>
            planes.AsSpan((((ink * Side) + row) * Side) + firstColumn, into.Length).CopyTo(into);
    }
}
