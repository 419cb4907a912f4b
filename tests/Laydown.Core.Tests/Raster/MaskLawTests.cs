using Laydown.Raster.Masks;
using Laydown.Raster.Separation;
using Laydown.Raster.Tiles;

namespace Laydown.Core.Tests.Raster;

public sealed class MaskLawTests
{
    [Fact]
    public void A_flood_is_full_everywhere() => Assert.All(Picture.Noise(4, 9, 9, 1).Through(new Flood()), v => Assert.Equal(Tile.Full, v));

    [Fact]
    public void Under_image_is_full_exactly_where_an_ink_stands_over_the_threshold()
    {
        Picture picture = Picture.Noise(4, 60, 60, 4);
        ushort[] mask = picture.Through(new AnyInk(), new Threshold(70));
        ushort threshold = (ushort)(0.7 * Tile.Full);
        for (int y = 0; y < 60; y++)
        {
            for (int x = 0; x < 60; x++)
                Assert.Equal(Enumerable.Range(0, 4).Any(i => picture[i, y, x] > threshold) ? Tile.Full : 0, mask[(y * 60) + x]);
        }
    }

    [Fact]
    public void Any_ink_and_threshold_are_the_same_in_every_width_and_take_only_the_planes_named()
    {
        Picture picture = Picture.Noise(5, 7, 133, 8);
        foreach (Lanes lanes in LanesHere.All)
        {
            Assert.Equal(picture.Through(new AnyInk(null, Lanes.Plain)), picture.Through(new AnyInk(null, lanes)));
            ushort[] some = picture.Through(new AnyInk([4, 1], lanes));
            ushort[] cut = picture.Through(new AnyInk([4, 1], lanes), new Threshold(55, lanes));
            for (int i = 0; i < some.Length; i++)
            {
                Assert.Equal(Math.Max(picture[4, i / 133, i % 133], picture[1, i / 133, i % 133]), some[i]);
                Assert.Equal(some[i] > (ushort)(0.55 * Tile.Full) ? Tile.Full : 0, cut[i]);
            }
        }
    }

    [Fact]
    public void Inverse_and_mask_picture_add_up_to_full_and_never_rise_or_fall_with_ink()
    {
        Picture picture = Picture.Noise(4, 40, 40, 6);
        ushort[] light = picture.Through(new Lightness(true));
        ushort[] dark = picture.Through(new Lightness(false));
        Assert.All(light.Zip(dark), pair => Assert.Equal(Tile.Full, pair.First + pair.Second));
        Picture more = new(4, 40, 40, (i, y, x) => (ushort)Math.Min(Tile.Full, picture[i, y, x] + 900));
        Assert.All(light.Zip(more.Through(new Lightness(true))), pair => Assert.True(pair.Second <= pair.First));
        Assert.All(new Picture(4, 2, 2, (_, _, _) => 0).Through(new Lightness(true)), v => Assert.Equal(Tile.Full, v));
        Assert.All(new Picture(4, 2, 2, (i, _, _) => i == 3 ? Tile.Full : (ushort)0).Through(new Lightness(true)), v => Assert.Equal(0, v));
        Assert.All(new Picture(4, 2, 2, (i, _, _) => i < 3 ? Tile.Full : (ushort)0).Through(new Lightness(true)), v => Assert.Equal(0, v));
    }

    [Fact]
    public void A_mask_of_light_is_bare_where_the_file_is_clear_and_untouched_where_it_is_not()
    {
        Picture picture = Picture.Noise(6, 30, 30, 6);
        Picture shaped = new(6, 30, 30, (i, y, x) => i == 5 ? x < 10 ? (ushort)0 : x < 20 ? Tile.Full : (ushort)30000 : picture[i, y, x]);
        ushort[] light = picture.Through(new Lightness(true)), within = shaped.Through(new Lightness(true, 5));
        for (int i = 0; i < light.Length; i++)
            Assert.Equal(i % 30 < 10 ? 0 : i % 30 < 20 ? light[i] : (ushort)Math.Round(light[i] * 30000 / 65535.0), within[i]);
        Assert.Throws<ArgumentException>(() => new Lightness(true, 6).TargetInks(6));

        // Noise, and codes at both ends, where a division that is not exact would show.
        Picture ends = new(6, 40, 133, (i, y, x) => (Picture.Hash(3, i, y, x) & 3) switch { 0 => 0, 1 => Tile.Full, 2 => (ushort)(Tile.Full - 1), _ => picture[i, y, x] });
        foreach (bool ofLight in new[] { true, false })
        {
            foreach (int? alpha in new int?[] { null, 5 })
            {
                ushort[] plain = ends.Through(new Lightness(ofLight, alpha, Lanes.Plain));
                foreach (Lanes lanes in LanesHere.All)
                    Assert.Equal(plain, ends.Through(new Lightness(ofLight, alpha, lanes)));
            }
        }
    }

    [Fact]
    public void Two_curves_joined_are_one_after_the_other()
    {
        Picture picture = Picture.Noise(1, 40, 90, 17);
        InkCurve one = InkCurve.Through([0, 40, 45, 100], 90), other = InkCurve.Through([0, 10, 100], 70);
        Assert.Equal(picture.Through(new InkCurves([one]), new InkCurves([other])), picture.Through(new InkCurves([one.Then(other)])));
    }

    [Fact]
    public void A_negative_adds_up_to_full_with_its_mask_and_twice_is_the_mask()
    {
        Picture picture = Picture.Noise(2, 40, 40, 9);
        ushort[] negative = picture.Through(new Negative());
        Assert.Equal(2 * 40 * 40, negative.Length);
        for (int i = 0; i < negative.Length; i++)
            Assert.Equal(Tile.Full, negative[i] + picture[i / 1600, i / 40 % 40, i % 40]);
        Picture again = new(2, 40, 40, (i, y, x) => negative[(i * 1600) + (y * 40) + x]);
        Assert.Equal(picture.Through(new PickInks([0, 1])), again.Through(new Negative()));
    }

    [Fact]
    public void A_knock_out_leaves_no_ink_under_a_full_mask_and_all_under_none()
    {
        Picture picture = new(3, 30, 30, (i, y, x) => i == 2 ? (x < 10 ? Tile.Full : x < 20 ? (ushort)0 : (ushort)40000) : (ushort)Picture.Hash(1, i, y, x));
        ushort[] left = picture.Through(new KnockOut());
        Assert.Equal(2 * 30 * 30, left.Length);
        for (int i = 0; i < left.Length; i++)
        {
            int x = i % 30;
            ushort before = picture[i / 900, i / 30 % 30, x];
            Assert.Equal(x < 10 ? 0 : x < 20 ? before : Math.Min((int)before, Tile.Full - 40000), left[i]);
        }
    }

    [Fact]
    public void Strips_narrower_than_the_least_feature_go_wider_ones_stay_to_the_pixel_and_gaps_the_other_way_round()
    {
        // Strips 1 to 12 columns wide, 20 apart.
        Picture strips = new(1, 30, 260, (_, _, x) => x % 20 < x / 20 && x / 20 is > 0 and < 13 ? Tile.Full : (ushort)0);
        Picture gaps = new(1, 30, 260, (i, y, x) => (ushort)(Tile.Full - strips[i, y, x]));
        foreach (double width in new[] { 0, 1, 2, 2.1, 3, 4, 4.01, 5, 6.5, 9, 11.9 })
        {
            int most = Math.Max(0, (2 * (int)Math.Ceiling(width / 2)) - 2);
            ushort[] left = strips.Through(new MinFeature(width));
            ushort[] filled = gaps.Through(new MinFeature(-width));
            for (int x = 0; x < 260; x++)
            {
                Assert.Equal(x / 20 > most ? strips[0, 0, x] : 0, left[x]);
                Assert.Equal(Tile.Full - left[x], filled[x]);
            }
        }
    }

    [Fact]
    public void A_least_feature_adds_no_ink_takes_no_more_the_second_time_and_is_the_same_for_any_tiling_and_register()
    {
        foreach (Picture mask in new[] { Picture.Mask(70, 130, 12, 0.6, 7), Picture.Noise(1, 40, 60, 3) })
        {
            ushort[] all = mask.Through(new PickInks([0]));
            ushort[] once = mask.Through(new MinFeature(6.5));
            Assert.All(all.Zip(once), pair => Assert.True(pair.Second <= pair.First));
            Assert.Equal(once, mask.Through([new MinFeature(6.5)], 13, 50));

            // Within the picture: over its edge the first pass leaves what the second one sees repeated.
            Picture left = new(1, mask.Rows, mask.Columns, (_, y, x) => once[(y * mask.Columns) + x]);
            ushort[] twice = left.Through(new MinFeature(6.5));
            for (int i = 0; i < once.Length; i++)
            {
                if (i % mask.Columns is >= 6 and int x && x < mask.Columns - 6 && i / mask.Columns is >= 6 and int y && y < mask.Rows - 6)
                    Assert.Equal(once[i], twice[i]);
            }

            foreach (Lanes lanes in LanesHere.All)
                Assert.Equal(once, mask.Through(new MinFeature(6.5, null, lanes)));
        }
    }

    [Fact]
    public void A_keep_out_is_bare_wherever_the_tiles_are_cut_and_nothing_else_changes()
    {
        Picture picture = Picture.Noise(2, 50, 80, 31);
        PixelRect[] places = [new(10, 5, 20, 11), new(25, 12, 9, 30), new(-6, 40, 16, 400), new(70, -3, 500, 8), new(33, 33, 0, 5), default];
        ushort[] left = picture.Through([new KeepOuts(places)], 50, 80);
        Assert.Equal(left, picture.Through([new KeepOuts(places)], 7, 13));
        for (int i = 0; i < left.Length; i++)
        {
            (int ink, int y, int x) = (i / 4000, i / 80 % 50, i % 80);
            bool kept = (x is >= 10 and < 30 && y is >= 5 and < 16) || (x is >= 25 and < 34 && y is >= 12 and < 42) || (x < 10 && y >= 40) || (x >= 70 && y < 5);
            Assert.Equal(kept ? 0 : picture[ink, y, x], left[i]);
        }

        // Behind a stage that looks around, the places stay those of the picture.
        Assert.Equal(
            picture.Through([new Choke(3), new KeepOuts(places)], 50, 80), picture.Through([new Choke(3), new KeepOuts(places)], 9, 11));
    }

    [Fact]
    public void A_curve_starts_at_nothing_ends_at_its_limit_and_never_falls()
    {
        foreach (double limit in new[] { 100, 93.7, 60, 0.0 })
        {
            InkCurve curve = InkCurve.Through([0, 8, 31, 31, 76, 100], limit);
            Assert.Equal(0, curve[0]);
            Assert.Equal((ushort)Math.Floor(limit / 100 * Tile.Full), curve[Tile.Full]);
            for (int wanted = 1; wanted <= Tile.Full; wanted++)
                Assert.True(curve[(ushort)wanted] >= curve[(ushort)(wanted - 1)]);
        }

        InkCurve straight = InkCurve.Straight(100);
        Assert.All(Enumerable.Range(0, 65536), v => Assert.Equal(v, straight[(ushort)v]));
    }

    [Fact]
    public void A_curve_passes_through_its_steps()
    {
        InkCurve curve = InkCurve.Through([0, 10, 40, 100], 80);
        Assert.Equal(0.8 * 0.10, curve[21845] / 65535.0, 1e-5);
        Assert.Equal(0.8 * 0.40, curve[43690] / 65535.0, 1e-5);
    }
}
