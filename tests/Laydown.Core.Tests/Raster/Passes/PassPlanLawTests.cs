using Laydown.Core.Tests.Raster.Screens;
using Laydown.Raster.Passes;
using Laydown.Raster.Screens;
using Laydown.Raster.Tiles;
using Xunit;

namespace Laydown.Core.Tests.Raster.Passes;

public sealed class PassPlanLawTests
{
    /// <summary>Nozzles come from passes × feed: J = P · F. Rows between nozzles, feed, passes, blocks.</summary>
    public static IEnumerable<TheoryDataRow<int, int, int, int>> Walks() =>
        from s in Enumerable.Range(1, 6)
        from f in Enumerable.Range(1, 13)
        from p in Enumerable.Range(1, 4)
        from k in Enumerable.Range(1, 3)
        where Common(f, s) == 1
        select new TheoryDataRow<int, int, int, int>(s, f, p, k);

    [Fact]
    public void A_walk_by_brute_force_meets_every_row_where_the_plan_says()
    {
        foreach ((int s, int f, int p, int k) in Walks().Select(w => w.Data))
        {
            // Independent of the plan's arithmetic: every nozzle of every scan is put on its row and written down there.
            HeadFigures head = Head(s, f, p, k);
            PassPlan plan = new(head, 97);
            int all = k * p * f;
            List<PassMeeting>[,] met = new List<PassMeeting>[k, 97];
            for (int scan = 0; scan < plan.ScanCount + 5; scan++)
            {
                for (int nozzle = 0; nozzle < all; nozzle++)
                {
                    int row = (scan * f) - ((all - 1 - nozzle) * s);
                    if (row is < 0 or >= 97)
                        continue;
                    Assert.True(scan < plan.ScanCount, "a scan after the last still meets the sheet");
                    (met[k - 1 - (nozzle / (p * f)), row] ??= []).Add(new(scan, nozzle));
                }
            }

            for (int layer = 0; layer < k; layer++)
                for (int row = 0; row < 97; row++)
                    Assert.Equal(met[layer, row], Enumerable.Range(0, p).Select(pass => plan.Meeting(layer, row, pass)));
        }
    }

    [Fact]
    public void Every_scan_tells_the_rows_and_nozzles_over_the_sheet_and_the_belt_moves_one_step_a_scan()
    {
        PassPlan plan = new(Head(4, 7, 2, 2), 97);
        PassScan[] scans = [.. plan.Scans()];
        Assert.Equal(plan.ScanCount, scans.Length);
        foreach (PassScan scan in scans)
        {
            int[] rows = [.. from layer in Enumerable.Range(0, 2)
                from row in Enumerable.Range(0, 97)
                from pass in Enumerable.Range(0, 2)
                where plan.Meeting(layer, row, pass).Scan == scan.Number
                select row];
            Assert.Equal((rows.Min(), rows.Max()), (scan.FirstRow, scan.LastRow));
            Assert.Equal((scan.LastRow - scan.FirstRow) / 4, scan.LastNozzle - scan.FirstNozzle);
            Assert.Equal(scan.Number % 2 == 0, scan.Forth);
            Assert.Equal(scan.Number * 7 * 25.4 / 720, scan.BeltMm, 1e-9);
        }

        Assert.All(new PassPlan(Head(4, 7, 2, 2) with { TwoWay = false }, 97).Scans(), s => Assert.True(s.Forth));
    }

    [Fact]
    public void A_layer_is_laid_down_before_the_next_one_touches_the_row()
    {
        PassPlan plan = new(Head(4, 7, 3, 3), 97);
        for (int row = 0; row < 97; row++)
            for (int layer = 1; layer < 3; layer++)
                Assert.True(plan.Meeting(layer - 1, row, 2).Scan < plan.Meeting(layer, row, 0).Scan);
    }

    [Theory]
    [InlineData(PassMask.Columns, 0)]
    [InlineData(PassMask.Columns, 9)]
    [InlineData(PassMask.Scattered, 0)]
    [InlineData(PassMask.Scattered, 9)]
    public void Every_dot_lies_in_the_picture_of_exactly_one_pass_and_all_of_them_are_the_whole(PassMask mask, int feather)
    {
        foreach (int bits in new[] { 1, 2 })
        {
            PassPlan plan = new(Head(3, 11, 4, 2) with { Mask = mask, FeatherNozzles = feather }, 120);
            byte[] whole = new byte[40], part = new byte[40], sum = new byte[40];
            new Random(5).NextBytes(whole);
            for (int row = 0; row < 120; row++)
            {
                Array.Clear(sum);
                for (int pass = 0; pass < 4; pass++)
                {
                    PassPicture.Row(plan, row % 2, pass, row, whole, bits, 64, part);
                    for (int at = 0; at < part.Length; at++)
                    {
                        Assert.Equal(0, sum[at] & part[at]);
                        sum[at] |= part[at];
                    }
                }

                Assert.Equal(whole, sum);
            }
        }
    }

    [Fact]
    public void The_picture_of_a_pass_holds_the_dots_that_pass_owns_and_that_of_a_scan_those_of_its_rows()
    {
        PassPlan plan = new(Head(3, 11, 4, 1) with { FeatherNozzles = 5 }, 90);
        byte[] whole = new byte[16], part = new byte[16];
        Array.Fill(whole, (byte)255);
        for (int row = 0; row < 90; row++)
        {
            PassPicture.RowOfScan(plan, 0, 7, row, whole, 1, 8, part);
            for (int column = 0; column < 128; column++)
            {
                int pass = plan.PassOf(0, row, column + 8);
                Assert.Equal(plan.Meeting(0, row, pass).Scan == 7, (part[column / 8] >> (7 - (column % 8)) & 1) == 1);
            }
        }
    }

    [Theory]
    [InlineData(PassMask.Columns)]
    [InlineData(PassMask.Scattered)]
    public void Passes_own_as_many_dots_as_their_weights_say_and_the_weights_of_a_row_add_up_to_one(PassMask mask)
    {
        PassPlan plan = new(Head(4, 31, 3, 1) with { Mask = mask, FeatherNozzles = 20 }, 200);
        const int columns = 30_000;
        for (int row = 0; row < 200; row += 7)
        {
            int[] owned = new int[3];
            for (int column = 0; column < columns; column++)
                owned[plan.PassOf(0, row, column)]++;
            Assert.Equal(1, Enumerable.Range(0, 3).Sum(p => plan.WeightOf(0, row, p)), 1e-12);

            // Chance alone leaves √(w(1 − w)/n) ≤ 0.0029; five of those are not met by 87 rows and passes.
            for (int pass = 0; pass < 3; pass++)
                Assert.Equal(plan.WeightOf(0, row, pass), owned[pass] / (double)columns, 0.0145);
        }
    }

    /// <summary>
    /// Thresholds of the deal know nothing of the screen's array: of a tint's dots every pass gets its share, give or take what chance would: a share of n dots is off
    /// by √(1/n), and five of those are not met. (Columns in turn were off by one deviation at most, 39 of 1638 dots.)
    /// </summary>
    [Theory]
    [InlineData(PassMask.Columns)]
    [InlineData(PassMask.Scattered)]
    public void Every_pass_gets_its_share_of_the_dots_of_a_screened_tint(PassMask mask)
    {
        const int side = 256;
        PassPlan plan = new(Head(4, 179, 4, 1) with { Mask = mask }, 1024);
        foreach (double tone in new[] { 0.1, 0.25, 0.5, 0.8 })
        {
            Tile flat = new(1, side, side);
            for (int row = 0; row < side; row++)
                flat.Row(0, row).Fill((ushort)Math.Round(tone * Tile.Full));
            DotRows dots = new(1, side, side, 1);
            LayerScreens.Of(Screened.One, DropLevels.One, ScreenKind.Arrays).Run(flat, side, side, dots, 0);
            int[] owned = new int[4];
            for (int row = 0; row < side; row++)
                for (int column = 0; column < side; column++)
                    owned[plan.PassOf(0, row, column)] += dots[0, row, column];
            double wanted = tone * side * side / 4;
            Assert.All(owned, n => Assert.Equal(1, n / wanted, 5 / Math.Sqrt(wanted)));
        }
    }

    [Fact]
    public void A_feathered_block_fades_at_its_ends_and_a_hard_one_does_not()
    {
        PassPlan hard = new(Head(1, 40, 2, 1), 400), soft = new(Head(1, 40, 2, 1) with { FeatherNozzles = 40 }, 400);
        for (int row = 100; row < 300; row++)
        {
            Assert.Equal(0.5, hard.WeightOf(0, row, 0));
            int nozzle = soft.Meeting(0, row, 0).Nozzle;
            Assert.Equal((80 - nozzle - 0.5) / 40, soft.WeightOf(0, row, 0), 1e-4);
        }
    }

    [Fact]
    public void Columns_in_turn_keep_a_nozzle_to_every_pth_column_and_scattered_dots_do_not()
    {
        Assert.Equal(4, new PassPlan(Head(4, 179, 4, 1), 1000).ClosestColumns());
        Assert.Equal(1, new PassPlan(Head(4, 179, 1, 1), 1000).ClosestColumns());
        Assert.Equal(1, new PassPlan(Head(4, 179, 4, 1) with { Mask = PassMask.Scattered }, 1000).ClosestColumns());

        // 1 m/s over 4 columns of 25.4 mm / 720: 1000 mm/s / 0.14111 mm = 7.087 kHz.
        Assert.Equal(7.087, new PassPlan(Head(4, 179, 4, 1), 1000).FiringKhz(1), 0.001);
    }

    [Fact]
    public void The_deal_is_the_same_wherever_a_row_is_cut()
    {
        PassPlan plan = new(Head(3, 11, 4, 1) with { Mask = PassMask.Scattered, FeatherNozzles = 7 }, 50);
        byte[] whole = new byte[32], left = new byte[12], right = new byte[20], all = new byte[32];
        new Random(8).NextBytes(whole);
        PassPicture.Row(plan, 0, 2, 33, whole, 1, 16, all);
        PassPicture.Row(plan, 0, 2, 33, whole.AsSpan(0, 12), 1, 16, left);
        PassPicture.Row(plan, 0, 2, 33, whole.AsSpan(12), 1, 16 + 96, right);
        Assert.Equal<byte>(all, left.Concat(right));
    }

    internal static HeadFigures Head(int s, int f, int p, int k) => new(p * f, s, f, p, k, true, 720, 720);

    private static int Common(int a, int b) => b == 0 ? a : Common(b, a % b);
}

public sealed class PassPlanRefusalTests
{
    [Theory]
    [InlineData(12, 4, 4, 3)]
    [InlineData(11, 4, 3, 4)]
    [InlineData(0, 1, 1, 1)]
    public void A_walk_that_misses_rows_is_refused(int nozzles, int s, int f, int p) =>
        Assert.ThrowsAny<ArgumentException>(() => new PassPlan(new(nozzles, s, f, p, 1, true, 720, 720), 100));

    [Fact]
    public void A_feather_wider_than_the_feed_or_of_a_single_pass_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new PassPlan(PassPlanLawTests.Head(4, 7, 2, 1) with { FeatherNozzles = 8 }, 100));
        Assert.Throws<ArgumentOutOfRangeException>(() => new PassPlan(PassPlanLawTests.Head(4, 7, 1, 1) with { FeatherNozzles = 1 }, 100));
    }

    [Fact]
    public void Rows_passes_scans_and_bits_that_are_none_are_refused()
    {
        PassPlan plan = new(PassPlanLawTests.Head(4, 7, 2, 1), 100);
        Assert.Throws<ArgumentOutOfRangeException>(() => plan.Meeting(0, 100, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => plan.Meeting(0, 0, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => plan.Meeting(1, 0, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => plan.Scan(plan.ScanCount));
        Assert.Throws<ArgumentOutOfRangeException>(() => PassPicture.Row(plan, 0, 0, 0, new byte[2], 4, 0, new byte[2]));
        Assert.Throws<ArgumentException>(() => PassPicture.Row(plan, 0, 0, 0, new byte[2], 1, 0, new byte[3]));
    }
}
