using Laydown.Formats.TiffWriting;
using Xunit;

namespace Laydown.Edges.Tests.PressFiles;

public sealed class DotTiffLawTests
{
    public static IEnumerable<TheoryDataRow<int, DotPacking>> Kinds() => DotTiffReferenceTests.Kinds();

    [Theory, MemberData(nameof(Kinds))]
    public void Any_order_and_any_number_of_threads_give_the_same_bytes(int bits, DotPacking packing)
    {
        using Bench bench = new();
        DotHeader header = DotPictures.Header(2003, 333, bits, packing, 10);
        string first = Path.Combine(bench.Pages, "first.tif"), other = Path.Combine(bench.Pages, "other.tif");
        DotPictures.Write(first, header);
        byte[] wanted = File.ReadAllBytes(first);

        int[] shuffled = [.. Enumerable.Range(0, header.Strips)];
        new Random(3).Shuffle(shuffled);
        DotPictures.Write(other, header, shuffled);
        Assert.Equal(wanted, File.ReadAllBytes(other));

        using (DotTiffWriter writer = DotTiffWriter.Create(other, header))
        {
            Parallel.ForEach(shuffled, strip => writer.Write(strip, DotPictures.Strip(header, strip)));
            Assert.All(shuffled, strip => Assert.True(writer.IsOnFile(strip)));
            writer.Finish();
        }

        Assert.Equal(wanted, File.ReadAllBytes(other));
    }

    [Theory, MemberData(nameof(Kinds))]
    public void Every_crop_holds_the_dots_of_its_place_and_zeros_behind_them(int bits, DotPacking packing)
    {
        using Bench bench = new();
        string path = Path.Combine(bench.Pages, "dots.tif");
        DotPictures.Write(path, DotPictures.Header(203, 61, bits, packing));
        using DotTiffReader reader = DotTiffReader.Open(path).Value;
        Assert.Equal((203, 61, bits, packing, "Light Cyan", 720.0, 360.0), (reader.Columns, reader.Rows, reader.BitsPerDot, reader.Packing, reader.InkName, reader.ScanDpi, reader.FeedDpi));
        Random random = new(7);
        for (int trial = 0; trial < 300; trial++)
        {
            int row = random.Next(61), first = random.Next(203), columns = random.Next(1, 204 - first);
            byte[] read = new byte[reader.BytesFor(columns)];
            reader.ReadRow(row, first, columns, read);
            byte[] wanted = new byte[read.Length];
            for (int x = 0; x < columns; x++)
                wanted[x * bits >> 3] |= (byte)(DotPictures.Code(row, first + x, bits) << (8 - bits - (x * bits & 7)));
            Assert.Equal(wanted, read);
        }
    }

    [Theory, MemberData(nameof(Kinds))]
    public void A_file_broken_off_and_gone_on_with_has_the_same_bytes(int bits, DotPacking packing)
    {
        using Bench bench = new();
        DotHeader header = DotPictures.Header(503, 333, bits, packing, 10);
        string whole = Path.Combine(bench.Pages, "whole.tif"), broken = Path.Combine(bench.Pages, "broken.tif");
        DotPictures.Write(whole, header);
        Dictionary<int, StripStamp> stamps = [];
        using (DotTiffWriter writer = DotTiffWriter.Create(broken, header))
        {
            foreach (int strip in new[] { 1, 0, 2, 3, 5, 4, 9 })
                stamps[strip] = writer.Write(strip, DotPictures.Strip(header, strip));
        }

        // Strip 3 is damaged after it was stamped, as by a loss of power.
        using (FileStream damage = File.OpenWrite(broken))
        {
            damage.Position = 16 + (packing == DotPacking.None ? 3 * header.BytesOf(0) : stamps[0].Bytes + stamps[1].Bytes + stamps[2].Bytes) + 5;
            damage.WriteByte(0x5A);
        }

        IReadOnlySet<int> sound = DotTiffWriter.SoundStrips(broken, header, stamps, CancellationToken.None);
        Assert.Equal(packing == DotPacking.None ? [0, 1, 2, 4, 5, 9] : [0, 1, 2], sound.Order());
        using (DotTiffWriter writer = DotTiffWriter.Reopen(broken, header, stamps.Where(s => sound.Contains(s.Key)).ToDictionary()))
        {
            for (int strip = header.Strips - 1; strip >= 0; strip--)
            {
                if (!sound.Contains(strip))
                    writer.Write(strip, DotPictures.Strip(header, strip));
            }

            writer.Finish();
        }

        Assert.Equal(File.ReadAllBytes(whole), File.ReadAllBytes(broken));
    }

    [Fact]
    public void Packed_rows_of_any_kind_unpack_to_themselves_within_the_stated_growth()
    {
        using Bench bench = new();
        Random random = new(11);
        for (int trial = 0; trial < 60; trial++)
        {
            // Runs of random length of few values, from all noise to all bare.
            int columns = random.Next(1, 3000), most = 1 << random.Next(0, 9);
            DotHeader header = new(columns, 5, 1, 720, 720, 5, DotPacking.PackBits, "K", "");
            byte[] rows = new byte[header.BytesOf(0)];
            for (int at = 0; at < rows.Length;)
            {
                byte value = (byte)random.Next(256);
                for (int run = random.Next(1, most + 1); run > 0 && at < rows.Length; run--)
                    rows[at++] = value;
            }

            string path = Path.Combine(bench.Pages, "packed.tif");
            StripStamp stamp;
            using (DotTiffWriter writer = DotTiffWriter.Create(path, header))
            {
                stamp = writer.Write(0, rows);
                writer.Finish();
            }

            Assert.InRange(stamp.Bytes, 1, rows.Length + (5 * ((header.RowBytes / 128) + 2)));
            using DotTiffReader reader = DotTiffReader.Open(path).Value;
            int used = columns & 7;
            byte[] row = new byte[header.RowBytes];
            for (int y = 0; y < 5; y++)
            {
                reader.ReadRow(y, 0, columns, row);
                Span<byte> wanted = rows.AsSpan(y * row.Length, row.Length);
                if (used != 0)
                    wanted[^1] &= (byte)(0xFF00 >> used);
                Assert.True(row.AsSpan().SequenceEqual(wanted));
            }
        }
    }
}
