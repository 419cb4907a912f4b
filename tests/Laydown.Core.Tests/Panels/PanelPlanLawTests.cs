using Laydown.Colour.Inks;
using Laydown.Colour.Spaces;
using Laydown.Core.Tests.Colour;
using Laydown.Optics.Looks;
using Laydown.Optics.Panels;

namespace Laydown.Core.Tests.Panels;

/// <summary>Plans for whole pictures.</summary>
public sealed class PanelPlanLawTests
{
    private const int Width = 60, Height = 44;

    public static TheoryData<WhiteUse> Uses => [WhiteUse.Fixed, WhiteUse.Stepped, WhiteUse.Free];

    [Theory, MemberData(nameof(Uses))]
    public void Bands_and_order_never_change_a_byte_and_sums_hold_after_rounding(WhiteUse use)
    {
        PairPicture pair = Picture();
        PanelPlan one = Plan(pair, use), other = Plan(pair, use);
        byte[] whole = new byte[9 * Width * Height], parts = new byte[9 * Width * Height];
        one.Rows(0, Height, Width, Height, pair.Pixels, whole);
        foreach (int first in new[] { 30, 7, 0, 20 })
        {
            int rows = first switch { 30 => 14, 7 => 13, 0 => 7, _ => 10 };
            byte[] band = new byte[9 * Width * rows];
            other.Rows(first, rows, Width, Height, pair.Pixels.AsSpan(6 * first * Width, 6 * rows * Width), band);
            for (int plane = 0; plane < 9; plane++)
                band.AsSpan(plane * rows * Width, rows * Width).CopyTo(parts.AsSpan((plane * Width * Height) + (first * Width)));
        }

        Assert.Equal(whole, parts);

        // Print order: white, inks in front, inks behind.
        for (int pixel = 0; pixel < Width * Height; pixel++)
        {
            int front = Enumerable.Range(1, 4).Sum(p => whole[(p * Width * Height) + pixel]);
            int back = Enumerable.Range(5, 4).Sum(p => whole[(p * Width * Height) + pixel]);
            Assert.InRange(front, 0, (int)(2.6 * 255));
            Assert.InRange(back, 0, (int)(2.6 * 255));
        }
    }

    [Fact]
    public void The_table_is_near_the_exact_search()
    {
        PairPicture pair = Picture();
        PanelPlan plan = Plan(pair, WhiteUse.Fixed);
        List<double> apart = [];
        float[] wish = new float[6], inks = new float[8];
        double[] exact = new double[8];
        foreach (int pixel in pair.Sample(400))
        {
            plan.Wanted(pair.At(pixel), wish);
            plan.Tables[0].Inks(wish, inks);
            plan.Tables[0].Solver.Solve(new(wish[0], wish[1], wish[2]), new(wish[3], wish[4], wish[5]), exact);
            (Lab day, Lab night) = plan.Seen([.. inks.Select(i => (double)i)], 1);
            (Lab exactDay, Lab exactNight) = plan.Seen(exact, 1);
            apart.Add(Ciede2000.Between(day, exactDay));
            apart.Add(Ciede2000.Between(night, exactNight));
        }

        // Wanted of the table: 0.5 on the mean, 2 for 99 of 100.
        Assert.InRange(apart.Average(), 0, 0.5);
        Assert.InRange(apart.Order().ElementAt((int)(0.99 * apart.Count)), 0, 2);
    }

    [Fact]
    public void White_that_may_change_leaves_no_more_than_the_best_single_white()
    {
        PairPicture pair = Picture();
        double Cost(PanelPlan plan)
        {
            (PanelReport report, _) = PanelJudge.Judge(plan, pair, 0.5, TestContext.Current.CancellationToken);
            return report.Day.Mean + report.Night.Mean;
        }

        PanelPlan free = Plan(pair, WhiteUse.Free), least = Plan(pair, WhiteUse.Fixed, 0.4), most = Plan(pair, WhiteUse.Fixed, 1);
        Assert.InRange(Cost(free), 0, 1.05 * Math.Min(Cost(least), Cost(most)));
    }

    [Fact]
    public void Day_first_leaves_hardly_anything_of_the_night_picture_in_the_day_view()
    {
        // Even day, lively night: without anything done the night layer moves the day view by 2.5; what is left may be 1 for 95 of 100.
        PairPicture pair = Picture(evenDay: true);
        PanelPlan plan = PanelPlanner.Plan(
            Duplex.SplitFaces(), Scene.Day(500, 0.8), Scene.Lit(0, 3000), new(0.1, WhiteUse.Fixed, [1], 10, 0.5, false, 1500), pair, 0.5, null, TestContext.Current.CancellationToken);
        (PanelReport report, PanelMaps maps) = PanelJudge.Judge(plan, pair, 0.5, TestContext.Current.CancellationToken);
        Assert.InRange(report.Leak.P95, 1.5, 4);
        Assert.InRange(report.Ghost.P95, 0, 1);
        Assert.InRange(report.NightLightLostPercent, 0, 40);
        Assert.Equal(Width * Height, maps.Ghost.Length);
    }

    [Fact]
    public void The_report_agrees_with_the_general_stack()
    {
        PairPicture pair = Picture();
        PanelPlan plan = Plan(pair, WhiteUse.Fixed);
        (PanelReport report, PanelMaps maps) = PanelJudge.Judge(plan, pair, 0.5, TestContext.Current.CancellationToken);
        PanelStack stack = Duplex.SplitFaces();
        StackOptics general = new(stack.Sheet, stack.Layers, 0.8);
        byte[] planes = new byte[9 * Width * Height];
        plan.Rows(0, Height, Width, Height, pair.Pixels, planes);
        double[] r = new double[36], t = new double[36];
        float[] wish = new float[6];
        foreach (int pixel in pair.Sample(60))
        {
            general.Solve([.. Enumerable.Range(0, 9).Select(p => planes[(p * Width * Height) + pixel] / 255.0)], r, t);
            plan.Wanted(pair.At(pixel), wish);
            Xyz day = Laydown.Colour.Spectra.SpectralWeights.For(Laydown.Colour.Spectra.Illuminant.D50).Of(r).Times(5 / Math.PI);
            Xyz night = Laydown.Colour.Spectra.SpectralWeights.For(Laydown.Colour.Spectra.Illuminant.LedB4).Of(t).Times(30);
            Assert.Equal(Ciede2000.Between(plan.Aim.SeenByDay(day), new(wish[0], wish[1], wish[2])), maps.Day[pixel], tolerance: 1e-4);
            Assert.Equal(Ciede2000.Between(plan.Aim.SeenLit(night), new(wish[3], wish[4], wish[5])), maps.Night[pixel], tolerance: 1e-4);
        }

        Assert.Equal(maps.Day.Average(), report.Day.Mean, tolerance: 1e-4);
        Assert.Equal(maps.Reason.Count(x => x != UnreachableReason.Reached) * 100.0 / maps.Reason.Length, report.UnreachablePercent, tolerance: 1e-9);
        Assert.All(Enumerable.Range(0, maps.Day.Length), i => Assert.Equal(
            maps.Day[i] > PanelJudge.Reached || maps.Night[i] > PanelJudge.Reached, maps.Reason[i] != UnreachableReason.Reached));
    }

    [Fact]
    public void Ways_it_may_go_wrong_grow_with_how_far_it_goes_wrong()
    {
        PairPicture pair = Picture();
        (PanelReport report, _) = PanelJudge.Judge(Plan(pair, WhiteUse.Fixed), pair, 0.5, TestContext.Current.CancellationToken);
        RobustnessRow Of(string what) => report.Robustness.Single(r => r.What == what);
        Assert.True(Of("register 0.2 mm").Night.Mean > Of("register 0.1 mm").Night.Mean);
        Assert.Equal(0, Of("lamp LED-B3").Day.Max, tolerance: 1e-3);
        Assert.True(Of("white +10 %").Night.Mean > 0.1 && Of("ink −5 %").Day.Mean > 0.1);
        Assert.Equal(8, report.Robustness.Count);
    }

    [Fact]
    public void Reasons_are_those_of_pairs_that_cannot_be()
    {
        UnreachableReason Of(Lab day, Lab night)
        {
            float[] pixels = [.. Enumerable.Range(0, 16).SelectMany(_ => new[] { day.L, day.A, day.B, night.L, night.A, night.B }).Select(v => (float)v)];
            PairPicture pair = new(4, 4, pixels);
            PanelPlan plan = PanelPlanner.Plan(
                Duplex.SplitFaces(), Scene.Day(500, 0.8), Scene.Lit(0, 3000), new(1, WhiteUse.Fixed, [1], 0, 1, false, 1500), pair, 1, null, TestContext.Current.CancellationToken);
            return PanelJudge.Judge(plan, pair, 1, TestContext.Current.CancellationToken).Maps.Reason[5];
        }

        Assert.Equal(UnreachableReason.Reached, Of(new(70, 0, 0), new(50, 0, 0)));
        Assert.Equal(UnreachableReason.DayHoldsLightBack, Of(new(30, 0, 0), new(95, 0, 0)));
        Assert.Equal(UnreachableReason.DayTooColourful, Of(new(60, 100, -60), new(30, 0, 0)));
        Assert.Equal(UnreachableReason.DayFiltersHue, Of(new(80, 0, 80), new(55, 0, -50)));
        Assert.Equal(UnreachableReason.NightTooColourful, Of(new(75, 0, 0), new(60, 110, 100)));
    }

    [Fact]
    public void The_preview_shows_what_the_plan_prints()
    {
        PairPicture pair = Picture();
        PanelPlan plan = Plan(pair, WhiteUse.Fixed);
        PanelPreview preview = new(Duplex.SplitFaces(), Scene.Day(500, 0.8), Scene.Lit(0, 3000), 1, 1, plan.Aim.LiftPercent, plan.Aim.NightExposure);
        float[] room = new float[3 * Width * Height], lamp = new float[3 * Width * Height], wantedRoom = new float[3 * Width], wantedLamp = new float[3 * Width];
        preview.Pixels(pair.Pixels, room, lamp);
        byte[] planes = new byte[9 * Width];
        PanelStack stack = Duplex.SplitFaces();
        StackLight light = new(stack.Sheet, stack.Layers, Laydown.Colour.Spectra.Illuminant.D50, Laydown.Colour.Spectra.Illuminant.LedB4, 0.8);
        plan.Rows(20, 1, Width, Height, pair.Pixels.AsSpan(6 * 20 * Width, 6 * Width), planes);
        light.Row(planes, Width, wantedRoom, wantedLamp);

        // Its nodes stand twice as far apart: a few percent of the light on the mean.
        Assert.InRange(Enumerable.Range(0, 3 * Width).Average(i => Math.Abs(room[(3 * 20 * Width) + i] - wantedRoom[i])), 0, 0.02);
        Assert.InRange(Enumerable.Range(0, 3 * Width).Average(i => Math.Abs(lamp[(3 * 20 * Width) + i] - wantedLamp[i])), 0, 0.01);
    }

    [Fact]
    public void Light_inks_take_the_lights_of_the_front_layer_and_the_pair_comes_as_near_as_without()
    {
        // Light ink alone up to a tone of 0.25, then the dark one takes over and the light one falls to 0.2.
        double[] light = [.. Enumerable.Range(0, 101).Select(i => i <= 25 ? i / 33.0 : 0.76 - (0.56 * (i - 25) / 75.0))];
        double[] dark = [.. Enumerable.Range(0, 101).Select(i => Math.Max(0, i - 25) / 75.0)];
        LookInk[] six = [.. Duplex.Cmyk, .. new[] { ProcessInk.LightCyan, ProcessInk.LightMagenta }.Select(i => LookInk.Colour(GenericUvInks.Density(i)))];
        PanelStack four = Duplex.SplitFaces(), with = new(
            four.Sheet, [four.Layers[0], new(LookFace.First, six), four.Layers[2]], LookFace.First,
            new([1, 1, 1, 1, 1, 1], 2.6, [1, 1, 1, 1], 2.6), [new(0, 4, light, dark), new(1, 5, light, dark)]);
        PairPicture pair = Picture();
        PanelPlan Of(PanelStack stack) => PanelPlanner.Plan(
            stack, Scene.Day(500, 0.8), Scene.Lit(0, 3000), new(1, WhiteUse.Fixed, [1], 15, 0.5, false, 1500), pair, 0.5, null, TestContext.Current.CancellationToken);
        PanelPlan plan = Of(with);
        byte[] planes = new byte[11 * Width * Height];
        plan.Rows(0, Height, Width, Height, pair.Pixels, planes);
        for (int pixel = 0; pixel < Width * Height; pixel++)
        {
            byte At(int plane) => planes[(plane * Width * Height) + pixel];
            Assert.InRange(Enumerable.Range(1, 6).Sum(p => At(p)), 0, (int)(2.6 * 255));
            for (int hue = 0; hue < 2; hue++)
            {
                // A tone of both inks lies on the split's path: dark ink only where light ink has passed its top, to a code of rounding.
                double tone = At(1 + hue) > 1 ? 0.25 + (0.75 * At(1 + hue) / 255.0) : At(5 + hue) / 255.0 * 0.33;
                double onPath = tone <= 0.25 ? tone / 0.33 : 0.76 - (0.56 * (tone - 0.25) / 0.75);
                Assert.Equal(onPath, At(5 + hue) / 255.0, tolerance: 0.03);
            }
        }

        PanelReport lights = PanelJudge.Judge(plan, pair, 0.5, TestContext.Current.CancellationToken).Report;
        PanelReport without = PanelJudge.Judge(Of(four), pair, 0.5, TestContext.Current.CancellationToken).Report;
        Assert.True(lights.MeanInk[5] > 0.05, "Light cyan lies where the picture is light.");
        Assert.InRange(lights.Day.Mean + lights.Night.Mean, 0, without.Day.Mean + without.Night.Mean + 0.3);
    }

    [Fact]
    public void Slopes_of_tones_are_those_of_small_steps()
    {
        double[] light = [.. Enumerable.Range(0, 101).Select(i => i <= 25 ? i / 33.0 : 0.76 - (0.56 * (i - 25) / 75.0))];
        double[] dark = [.. Enumerable.Range(0, 101).Select(i => Math.Max(0, i - 25) / 75.0)];
        PanelStack four = Duplex.SplitFaces();
        PanelTones tones = new(new PanelStack(
            four.Sheet, [four.Layers[0], new(LookFace.First, [.. Duplex.Cmyk, Duplex.Cmyk[0]]), four.Layers[2]], LookFace.First,
            new([1, 1, 1, 1, 0.6], 2.6, [1, 1, 1, 1], 2.6), [new(0, 4, light, dark)]));
        Assert.Equal((8, 4, 9, 5), (tones.Count, tones.FrontCount, tones.InkCount, tones.FrontInks));
        Assert.InRange(tones.Most[0], 0.15, 0.25);
        double[] at = [0.133, 0.4, 0.5, 0.6, 0.7, 0.2, 0.1, 0.3], high = [.. at], inks = new double[9], more = new double[9], slopes = new double[16];
        tones.Inks(at, inks);
        tones.Slopes(at, slopes);
        high[0] += 1e-4;
        tones.Inks(high, more);
        Assert.Equal((more[0] - inks[0]) / 1e-4, slopes[0], tolerance: 1e-6);
        Assert.Equal((more[4] - inks[4]) / 1e-4, slopes[1], tolerance: 1e-6);
        Assert.Equal([0.4, 0.5, 0.6], inks[1..4]);
        Assert.Equal([0.7, 0.2, 0.1, 0.3], inks[5..]);
    }

    private static PanelPlan Plan(PairPicture pair, WhiteUse use, double strength = 1) => PanelPlanner.Plan(
        Duplex.SplitFaces(), Scene.Day(500, 0.8), Scene.Lit(0, 3000),
        new(1, use, use switch { WhiteUse.Fixed => [strength], WhiteUse.Stepped => [0.4, 0.7, 1], _ => [0.4, 1] }, 15, 0.5, true, 1500),
        pair, 0.5, null, TestContext.Current.CancellationToken);

    // A bright, slowly changing day over a night of lights and darks.
    private static PairPicture Picture(bool evenDay = false)
    {
        float[] pixels = new float[6 * Width * Height];
        for (int pixel = 0; pixel < Width * Height; pixel++)
        {
            double x = pixel % Width / (double)Width, y = pixel / Width / (double)Height;
            double night = 45 + (35 * Math.Sin(9 * x) * Math.Cos(7 * y));
            ReadOnlySpan<double> six =
            [
                evenDay ? 85 : 60 + (30 * y) + (5 * Math.Sin(20 * x)), evenDay ? 0 : (20 * x) - 10, evenDay ? 4 : 15 - (40 * y),
                night, 10 * Math.Sin(5 * y), -20 * Math.Cos(6 * x),
            ];
            for (int i = 0; i < 6; i++)
                pixels[(6 * pixel) + i] = (float)six[i];
        }

        return new(Width, Height, pixels);
    }
}
