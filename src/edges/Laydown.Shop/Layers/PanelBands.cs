using System.Collections.Concurrent;
using Laydown.Optics.Panels;

namespace Laydown.Shop.Layers;

/// <summary>Turns a pair of pictures into planes, band after band on all cores; the same bytes for any bands and any number of threads.</summary>
/// <param name="plan">What was settled for the whole.</param>
/// <param name="pair">The pair.</param>
/// <param name="planeOf">For each plane written the plan's coverage, −1 for one that stays bare.</param>
internal sealed class PanelBands(PanelPlan plan, PairFile pair, IReadOnlyList<int> planeOf)
{
    private const int WishPlanes = 6;

    /// <summary>Pixels of a band: few enough that a cancel is heard at once, enough that files are written in long runs.</summary>
    public int BandPixels { get; init; } = 1 << 15;

    /// <summary>Most threads; all cores when not set.</summary>
    public int Threads { get; init; } = Environment.ProcessorCount;

    /// <summary>Writes planes and what was aimed at.</summary>
    /// <param name="planesPath">Full path of the planes; must not exist.</param>
    /// <param name="wishPath">Full path of the wish; must not exist.</param>
    /// <param name="progress">Told the share that is done.</param>
    /// <param name="cancellation">Looked at before each band.</param>
    public void Write(string planesPath, string wishPath, IProgress<double>? progress, CancellationToken cancellation)
    {
        long pixels = (long)pair.Width * pair.Height;
        using var planes = File.OpenHandle(planesPath, FileMode.CreateNew, FileAccess.Write, FileShare.None, FileOptions.None, planeOf.Count * pixels);
        using var wish = File.OpenHandle(wishPath, FileMode.CreateNew, FileAccess.Write, FileShare.None, FileOptions.None, WishPlanes * pixels);
        int rows = Math.Max(1, BandPixels / pair.Width), bands = (pair.Height + rows - 1) / rows, done = 0;
        ConcurrentBag<Room> rooms = [];
        Parallel.For(0, bands, new ParallelOptions { CancellationToken = cancellation, MaxDegreeOfParallelism = Threads }, band =>
        {
            cancellation.ThrowIfCancellationRequested();
            Room room = rooms.TryTake(out Room? free) ? free : new(rows * pair.Width, plan.CoverageCount);
            int first = band * rows, count = Math.Min(rows, pair.Height - first), size = count * pair.Width;
            pair.Read(first, count, room.Pair.AsSpan(0, PairFile.Values * size));
            plan.Rows(
                first, count, pair.Width, pair.Height, room.Pair.AsSpan(0, PairFile.Values * size), room.Planes.AsSpan(0, plan.CoverageCount * size));
            for (int plane = 0; plane < planeOf.Count; plane++)
            {
                ReadOnlySpan<byte> from = planeOf[plane] < 0 ? room.Bare.AsSpan(0, size) : room.Planes.AsSpan(planeOf[plane] * size, size);
                RandomAccess.Write(planes, from, (plane * pixels) + ((long)first * pair.Width));
            }

            WriteWish(wish, pixels, (long)first * pair.Width, size, room);
            rooms.Add(room);
            progress?.Report(Interlocked.Increment(ref done) / (double)bands);
        });
    }

    private void WriteWish(Microsoft.Win32.SafeHandles.SafeFileHandle file, long pixels, long at, int size, Room room)
    {
        ReadOnlySpan<float> from = room.Pair.AsSpan(0, PairFile.Values * size);
        plan.Wanted(from, room.Wanted.AsSpan(0, from.Length));
        for (int plane = 0; plane < WishPlanes; plane++)
        {
            (float scale, float add) = plane % 3 == 0 ? (2.55f, 0f) : (1f, 128f);
            for (int i = 0; i < size; i++)
                room.Line[i] = (byte)Math.Clamp(MathF.Round((room.Wanted[(WishPlanes * i) + plane] * scale) + add), 0, 255);
            RandomAccess.Write(file, room.Line.AsSpan(0, size), (plane * pixels) + at);
        }
    }

    // What one thread works in; lent from band to band.
    private sealed class Room(int pixels, int coverages)
    {
        public float[] Pair { get; } = new float[PairFile.Values * pixels];

        public float[] Wanted { get; } = new float[PairFile.Values * pixels];

        public byte[] Planes { get; } = new byte[coverages * pixels];

        public byte[] Line { get; } = new byte[pixels];

        public byte[] Bare { get; } = new byte[pixels];
    }
}
