using Laydown.Raster.Passes;
using Xunit;

namespace Laydown.Core.Tests.Raster.Passes;

public sealed class FeedProfileLawTests
{
    private static readonly PlacementErrors Jitter = new(0, 8, 0);

    [Theory]
    [InlineData(1, 1)]
    [InlineData(2, 4)]
    [InlineData(4, 3)]
    public void Without_errors_every_row_is_covered_as_asked(int passes, int s)
    {
        FeedProfile sound = FeedProfile.Of(new(PassPlanLawTests.Head(s, 61, passes, 2), 900), 1, PlacementErrors.None, NozzleFlaws.None);
        Assert.All([.. sound.Error, .. sound.Lost, .. sound.Register], e => Assert.Equal(0, e));
    }

    /// <summary>Swaths of 100 rows; from the sixth scan on the sheet stands 0.25 rows further. At tone 0.6 the line has the area 0.6 ×
    /// 0.25 = 0.15 rows.</summary>
    [Fact]
    public void A_hard_edge_that_is_off_by_delta_leaves_a_line_of_area_tone_times_delta()
    {
        const double tone = 0.6, delta = 0.25;
        FeedProfile hard = FeedProfile.Of(new(PassPlanLawTests.Head(1, 100, 1, 1), 1000), 0, n => n > 5 ? delta : 0, 0, 0, NozzleFlaws.None);

        Assert.Equal(-tone * delta, tone * hard.Error.Sum(), 1e-9);
        Assert.Equal(-tone * delta, tone * hard.Error.Min(), 1e-9);
        Assert.Single(hard.Error, e => e != 0);
    }

    /// <summary>The same step where the swath fades over h = 100 rows: the same area, and g·δ/h = 0.6 × 0.25 / 100 = 0.0015 in each row.
    /// Weights are kept to 1/131072.</summary>
    [Fact]
    public void An_edge_that_fades_over_h_rows_spreads_the_same_area_to_tone_times_delta_over_h()
    {
        const double tone = 0.6, delta = 0.25;
        HeadFigures head = PassPlanLawTests.Head(1, 100, 2, 1) with { FeatherNozzles = 100 };
        FeedProfile soft = FeedProfile.Of(new(head, 1000), 0, n => n > 6 ? delta : 0, 0, 0, NozzleFlaws.None);

        Assert.Equal(-tone * delta, tone * soft.Error.Sum(), 1e-4);
        Assert.Equal(-tone * delta / 100, tone * soft.Error.Min(), 2.0 / 131072);
        Assert.InRange(soft.Error.Count(e => e < -0.0020), 99, 101);
    }

    [Fact]
    public void A_sheet_moved_too_far_each_time_leaves_light_lines_at_every_edge_and_too_short_dark_ones()
    {
        // 0.1 % of 200 rows is 0.2 rows at each edge; between two edges the rows are drawn together by as much.
        PassPlan plan = new(PassPlanLawTests.Head(1, 200, 1, 1), 2000);
        FeedProfile far = FeedProfile.Of(plan, 0, _ => 0, 0.001, 0, NozzleFlaws.None), near = FeedProfile.Of(plan, 0, _ => 0, -0.001, 0, NozzleFlaws.None);
        Assert.InRange(far.Error.Count(e => e < -0.09), 9, 20);
        Assert.Equal(0.2 - 0.001, -far.Error.Skip(900).Take(200).Where(e => e < 0).Sum(), 0.002);
        Assert.InRange(near.Error.Count(e => e > 0.09), 9, 20);
        Assert.Equal(0, far.Error.Skip(400).Take(1000).Sum(), 0.01);
    }

    [Fact]
    public void No_dot_is_lost_by_jitter()
    {
        FeedProfile shaken = FeedProfile.Of(new(PassPlanLawTests.Head(4, 61, 3, 1), 3000), 0, Jitter, NozzleFlaws.None);
        Assert.True(shaken.Error.Min() < -0.02);

        // Dots pass over the ends of the sheet by their jitter alone: 8 µm of rows of 35 µm, four standard deviations at both ends.
        Assert.Equal(0, shaken.Error.Sum(), 2 * 4 * 8 / 35.0);
    }

    [Fact]
    public void A_slanted_nozzle_leaves_its_row_and_a_missing_one_loses_its_share()
    {
        PassPlan plan = new(PassPlanLawTests.Head(1, 50, 1, 1), 300);
        FeedProfile slanted = FeedProfile.Of(plan, 0, PlacementErrors.None, new(new HashSet<int>(), new Dictionary<int, double> { [10] = 25_400.0 / 720 }));
        int row = Enumerable.Range(50, 50).Single(r => plan.Meeting(0, r, 0).Nozzle == 10);
        Assert.Equal((-1, 1), (slanted.Error[row], slanted.Error[row + 1]));

        PassPlan twice = new(PassPlanLawTests.Head(1, 50, 2, 1), 300);
        FeedProfile missing = FeedProfile.Of(twice, 0, PlacementErrors.None, new(new HashSet<int> { 10 }, new Dictionary<int, double>()));
        Assert.Equal(6, missing.Lost.Count(e => e == -0.5));
        Assert.Equal(6, missing.Lost.Count(e => e != 0));
    }

    /// <summary>Dots are dealt out by the mask and put down one by one where their scan stands; rows of 16 384 dots, shares of a row are
    /// exact to 1/16 384 by columns in turn.</summary>
    [Fact]
    public void Dots_put_down_one_by_one_cover_the_rows_as_the_profile_says()
    {
        PassPlan plan = new(PassPlanLawTests.Head(3, 20, 2, 1), 200);
        double Stand(int scan) => ((scan * 7 % 11) - 5) / 20.0;
        FeedProfile profile = FeedProfile.Of(plan, 0, Stand, 0, 0, NozzleFlaws.None);
        const int columns = 16_384;
        double[] rows = new double[plan.Rows + 2];
        for (int row = 0; row < plan.Rows; row++)
        {
            for (int column = 0; column < columns; column++)
            {
                double off = Stand(plan.Meeting(0, row, plan.PassOf(0, row, column)).Scan);
                int whole = (int)Math.Floor(off);
                double rest = off - whole;
                if (row + whole >= 0)
                    rows[row + whole] += (1 - rest) / columns;
                rows[row + whole + 1] += rest / columns;
            }
        }

        // At the very ends rows beyond the sheet are missing from the walk of dots.
        for (int row = 2; row < plan.Rows - 2; row++)
            Assert.Equal(1 + profile.Error[row], rows[row], 2.0 / columns);
    }

    /// <summary>A tint of dots by chance; forth dots cover their column, back dots lie half a column further. Chance over 400 000
    /// columns: five deviations are 0.004.</summary>
    [Fact]
    public void Dots_fired_forth_and_back_that_lie_apart_cover_less_by_as_much_as_the_profile_says()
    {
        const double tone = 0.7;
        const int columns = 400_000;
        PassPlan plan = new(PassPlanLawTests.Head(3, 20, 2, 1) with { Mask = PassMask.Scattered }, 100);
        FeedProfile profile = FeedProfile.Of(plan, 0, new(0, 0, 0.5 * 25_400 / 720), NozzleFlaws.None);
        Random chance = new(3);
        foreach (int row in new[] { 40, 41, 60 })
        {
            bool[] forth = new bool[columns + 1], back = new bool[columns + 1];
            for (int column = 0; column < columns; column++)
            {
                if (chance.NextDouble() < tone)
                    (plan.Scan(plan.Meeting(0, row, plan.PassOf(0, row, column)).Scan).Forth ? forth : back)[column] = true;
            }

            // Each column in two halves: the back dots of the column before reach into the left one.
            double covered = Enumerable.Range(1, columns - 1).Sum(x => (forth[x] || back[x - 1] ? 0.5 : 0) + (forth[x] || back[x] ? 0.5 : 0)) / (columns - 1);
            Assert.Equal(tone + (tone * tone * profile.Register[row]), covered, 0.004);
        }

        Assert.Contains(profile.Register, e => e < -0.1);
    }
}

public sealed class EyeAlongFeedLawTests
{
    [Theory]
    [InlineData(200)]
    [InlineData(700)]
    public void A_grating_comes_through_with_the_weight_of_its_frequency(double rowsPerDegree)
    {
        EyeAlongFeed eye = new(20_000, rowsPerDegree, u => Math.Exp(-u * u / 100), 0);
        double[] grating = [.. Enumerable.Range(0, 20_000).Select(r => Math.Sin(2 * Math.PI * r * 5 / rowsPerDegree))];
        (double[] seen, double[] none) = eye.See(grating, new double[20_000]);

        // Averaging two rows of 700 in a degree takes 1 − cos(π·5/700) = 0.00025 of a grating of 5 periods.
        double[] middle = seen[(seen.Length / 3)..(seen.Length * 2 / 3)];
        Assert.Equal(Math.Exp(-0.25), middle.Max(), 0.001);
        Assert.Equal(-Math.Exp(-0.25), middle.Min(), 0.001);
        Assert.All(none, n => Assert.Equal(0, n, 1e-9));
    }

    [Fact]
    public void Weights_of_one_give_the_profile_back_and_two_profiles_do_not_mix()
    {
        Random chance = new(2);
        double[] one = [.. Enumerable.Range(0, 777).Select(_ => chance.NextDouble())], other = [.. one.Reverse()];
        (double[] a, double[] b) = new EyeAlongFeed(777, 100, _ => 1, 0).See(one, other);
        for (int row = 0; row < 777; row++)
        {
            Assert.Equal(one[row], a[row], 1e-12);
            Assert.Equal(other[row], b[row], 1e-12);
        }
    }

    /// <summary>
    /// One dead row in 256 at 720 dpi and 0.4 m, seen with V = exp(−kρ) of [Nasanen1984] (11 cd/m²): a line of area g leaves g · 2/k · (1
    /// − e^(−k/2)) with
    /// k = π · 11 340 / (180 (0.525 ln 11 + 3.91)) = 38.3, so 0.0522 g. Halftones simulated dot by dot gave peaks of 14.0, 24.6 and 38.4
    /// · 10⁻³ at tones 0.25,
    /// 0.5 and 0.75, with 1.3 to 1.8 · 10⁻³ from the halftone of a sound head: that grain is the tolerance.
    /// </summary>
    [Theory]
    [InlineData(0.25, 0.0140)]
    [InlineData(0.50, 0.0246)]
    [InlineData(0.75, 0.0384)]
    public void A_dead_row_is_as_visible_as_simulated_halftones_say(double tone, double simulated)
    {
        double seen = DeadRow(tone).Max(Math.Abs);
        Assert.Equal(0.0522 * tone, seen, 0.0003);
        Assert.Equal(simulated, seen, 0.0018);
    }

    internal static double[] DeadRow(double tone)
    {
        PassPlan plan = new(PassPlanLawTests.Head(1, 256, 1, 1), 4096);
        FeedProfile profile = FeedProfile.Of(plan, 0, PlacementErrors.None, new(new HashSet<int> { 100 }, new Dictionary<int, double>()));
        return Nasanen([.. profile.Lost.Select(e => e * tone)]);
    }

    /// <summary>A profile of rows at 720 dpi as seen from 0.4 m at 11 cd/m².</summary>
    internal static double[] Nasanen(double[] rows)
    {
        double k = Math.PI * 11_340 / (180 * ((0.525 * Math.Log(11)) + 3.91));

        // Frequency in periods a row: the eye is told 100 rows to a degree.
        return new EyeAlongFeed(rows.Length, 100, u => Math.Exp(-k * u / 100), 0).See(rows, new double[rows.Length]).One;
    }
}
