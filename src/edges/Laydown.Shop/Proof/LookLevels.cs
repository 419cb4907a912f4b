using Laydown.Shop.Layers;

namespace Laydown.Shop.Proof;

/// <summary>Ink planes of a look at full size and halved again and again, kept beside the shop's pictures: built once for each look, whole or absent.</summary>
/// <remarks>
/// Level 0 is the look's own file; each further level has half the pixels of the one before each way (rounded up), every pixel the rounded mean of the ink of the up to four
/// it covers. Files are <c>previews/looks/<i>hash of the planes</i>/level-<i>n</i>.raw</c>, laid out like the planes. Halving ends with the first level that fits into one tile.
/// </remarks>
/// <param name="folder">The shop's folder.</param>
public sealed class LookLevels(ShopFolder folder)
{
    /// <summary>Pixels of a tile each way.</summary>
    public const int TilePx = 256;

    private static readonly TimeSpan StaleAfter = TimeSpan.FromHours(1);
    private readonly Dictionary<string, Task> making = new(StringComparer.Ordinal);
    private readonly Lock gate = new();

    /// <summary>Number of levels of a picture, at least 1.</summary>
    public static int CountOf(int widthPx, int heightPx)
    {
        int levels = 1;
        for (int side = Math.Max(widthPx, heightPx); side > TilePx; side = (side + 1) / 2)
            levels++;
        return levels;
    }

    /// <summary>Pixels of a level along one side.</summary>
    public static int SideAt(int sidePx, int level)
    {
        for (int i = 0; i < level; i++)
            sidePx = (sidePx + 1) / 2;
        return sidePx;
    }

    /// <summary>Full path of a level, built first where it is not there yet. Several may ask at once: it is built once.</summary>
    /// <param name="look">The look.</param>
    /// <param name="level">0 to the number of levels − 1.</param>
    /// <param name="cancellation">Stops waiting; what is being built for others goes on.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such level.</exception>
    /// <exception cref="IOException">The disk refuses.</exception>
    public async Task<string> PathAsync(StoredLook look, int level, CancellationToken cancellation)
    {
        LookRecord record = look.Record;
        if (level < 0 || level >= CountOf(record.WidthPx, record.HeightPx))
            throw new ArgumentOutOfRangeException(nameof(level), level, "Level: wanted one of the picture.");
        string planes = Path.Combine(look.Folder, LookRecord.PlanesFile);
        if (level == 0)
            return planes;
        string place = PlaceOf(record);
        if (!Directory.Exists(place))
            await MakeOnceAsync(record, planes, place).WaitAsync(cancellation);
        return Path.Combine(place, NameOf(level));
    }

    private static string NameOf(int level) => Invariant($"level-{level}.raw");

    private string PlaceOf(LookRecord record) => Path.Combine(
        folder.Previews, "looks", Invariant($"{record.PlanesSha256 ?? throw new InvalidDataException("look.json: found no hash of the planes; wanted one.")}"));

    private Task MakeOnceAsync(LookRecord record, string planes, string place)
    {
        lock (gate)
        {
            if (making.TryGetValue(place, out Task? busy) && !busy.IsCompleted)
                return busy;
            return making[place] = Task.Run(() => Make(record, planes, place));
        }
    }

    private static void Make(LookRecord record, string planes, string place)
    {
        if (Directory.Exists(place))
            return;
        string parent = Path.GetDirectoryName(place)!;
        Directory.CreateDirectory(parent);
        SweepLeft(parent);
        string beside = Invariant($"{place}.{Guid.NewGuid():N}.part");
        Directory.CreateDirectory(beside);
        try
        {
            string from = planes;
            (int width, int height) = (record.WidthPx, record.HeightPx);
            for (int level = 1; level < CountOf(record.WidthPx, record.HeightPx); level++)
            {
                string to = Path.Combine(beside, NameOf(level));
                Halve(from, to, record.PlaneCount, width, height);
                (from, width, height) = (to, (width + 1) / 2, (height + 1) / 2);
            }

            Directory.Move(beside, place);
        }
        catch (IOException) when (Directory.Exists(place))
        {
            // Another process of the same shop was first; both made the same bytes.
        }
        finally
        {
            if (Directory.Exists(beside))
                Directory.Delete(beside, recursive: true);
        }
    }

    // What a killed maker left: no building lasts an hour.
    private static void SweepLeft(string parent)
    {
        foreach (string left in Directory.GetDirectories(parent, "*.part").Where(d => Directory.GetLastWriteTimeUtc(d) < DateTime.UtcNow - StaleAfter))
        {
            try
            {
                Directory.Delete(left, recursive: true);
            }
            catch (IOException)
            {
                // Someone else sweeps it too.
            }
        }
    }

    private static void Halve(string from, string to, int planes, int width, int height)
    {
        using FileStream source = new(from, new FileStreamOptions { Options = FileOptions.SequentialScan, BufferSize = 1 << 20 });
        using FileStream target = new(to, new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write, BufferSize = 1 << 20 });
        byte[] upper = new byte[width], lower = new byte[width], half = new byte[(width + 1) / 2];
        for (int plane = 0; plane < planes; plane++)
        {
            for (int row = 0; row < height; row += 2)
            {
                source.ReadExactly(upper);
                if (row + 1 < height)
                    source.ReadExactly(lower);
                HalveRow(upper, row + 1 < height ? lower : upper, half);
                target.Write(half);
            }
        }

        target.Flush(flushToDisk: true);
    }

    /// <summary>Two rows to one of half as many pixels; the last pixel of an odd row covers itself alone.</summary>
    internal static void HalveRow(ReadOnlySpan<byte> upper, ReadOnlySpan<byte> lower, Span<byte> half)
    {
        int pairs = upper.Length / 2;
        for (int x = 0; x < pairs; x++)
            half[x] = (byte)((upper[2 * x] + upper[(2 * x) + 1] + lower[2 * x] + lower[(2 * x) + 1] + 2) / 4);
        if (half.Length > pairs)
            half[pairs] = (byte)((upper[^1] + lower[^1] + 1) / 2);
    }
}
