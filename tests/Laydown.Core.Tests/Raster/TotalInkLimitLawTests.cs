using Laydown.Raster.Separation;
using Laydown.Raster.Tiles;

namespace Laydown.Core.Tests.Raster;

public sealed class TotalInkLimitLawTests
{
    private const int Inks = 6;

    public static TheoryData<double> Limits => [40, 99.9, 100, 180, 237.3, 300];

    [Theory, MemberData(nameof(Limits))]
    public void No_pixel_exceeds_the_limit_and_one_under_it_is_untouched(double limitPercent)
    {
        Picture picture = Picture.Noise(Inks, 120, 111, 11);
        ushort[] limited = picture.Through(new TotalInkLimit(limitPercent, 3));
        int untouched = 0, cut = 0;
        for (int y = 0; y < 120; y++)
        {
            for (int x = 0; x < 111; x++)
            {
                long before = 0, after = 0;
                bool same = true;
                for (int ink = 0; ink < Inks; ink++)
                {
                    ushort value = limited[(((ink * 120) + y) * 111) + x];
                    before += picture[ink, y, x];
                    after += value;
                    same &= value == picture[ink, y, x];
                    Assert.True(value <= picture[ink, y, x]);
                }

                Assert.True(after * 100 <= limitPercent * Tile.Full);
                Assert.Equal(before * 100 <= limitPercent * Tile.Full, same);
                _ = same ? untouched++ : cut++;

                // Rounding down loses less than one code for each scaled ink, and the rest of the limit is used.
                if (!same)
                    Assert.True(after + Inks >= Math.Floor(limitPercent * Tile.Full / 100));
            }
        }

        Assert.True(cut > 0, "the picture must reach over the limit");
        Assert.True(limitPercent < 180 || untouched > 0, "the picture must stay under the limit somewhere");
    }

    [Fact]
    public void Black_is_kept_until_it_alone_exceeds_the_limit()
    {
        Picture picture = Picture.Noise(4, 50, 50, 5);
        ushort[] limited = picture.Through(new TotalInkLimit(90, 3));
        ushort most = (ushort)Math.Floor(0.9 * Tile.Full);
        for (int y = 0; y < 50; y++)
        {
            for (int x = 0; x < 50; x++)
                Assert.Equal(Math.Min(picture[3, y, x], most), limited[(((3 * 50) + y) * 50) + x]);
        }
    }

    [Theory, MemberData(nameof(Limits))]
    public void Eight_bits_keep_the_limit_and_stay_within_one_code(double limitPercent)
    {
        Picture picture = Picture.Noise(Inks, 60, 80, 17);
        ushort[] limited = picture.Through(new TotalInkLimit(limitPercent, 3));
        Tile tile = new(Inks, 60, 80);
        for (int ink = 0; ink < Inks; ink++)
        {
            for (int y = 0; y < 60; y++)
                limited.AsSpan(((ink * 60) + y) * 80, 80).CopyTo(tile.Row(ink, y));
        }

        byte[] bytes = new byte[Inks * 80];
        for (int y = 0; y < 60; y++)
        {
            EightBits.Narrow(tile, y, limitPercent, bytes);
            for (int x = 0; x < 80; x++)
            {
                int sum = 0;
                for (int ink = 0; ink < Inks; ink++)
                {
                    sum += bytes[(ink * 80) + x];
                    Assert.InRange((bytes[(ink * 80) + x] * 257) - tile.Row(ink, y)[x], -256, 128);
                }

                Assert.True(sum * 100 <= limitPercent * 255);
            }
        }
    }

    [Fact]
    public void Eight_bits_there_and_back_are_the_same()
    {
        Tile tile = new(1, 1, 256);
        for (int v = 0; v < 256; v++)
            tile.Row(0, 0)[v] = EightBits.Widened((byte)v);
        byte[] bytes = new byte[256];
        EightBits.Narrow(tile, 0, 100, bytes);
        Assert.Equal(Enumerable.Range(0, 256).Select(v => (byte)v), bytes);
    }
}
