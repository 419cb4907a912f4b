using Laydown.Press.Heat;
using Laydown.Press.Machines;
using Laydown.Press.Stocks;
using Xunit;

namespace Laydown.Core.Tests.Press;

public sealed class SheetWarmthLawTests
{
    /// <summary>
    /// The sum of cosines against the same slab cut into 400 slices that pass heat to each other step by step. What 60 terms and 400 slices leave out is under 1 %.
    /// </summary>
    [Theory]
    [InlineData(1, 0.05)]
    [InlineData(8, 0.01)]
    [InlineData(8, 0.2)]
    [InlineData(20, 0.03)]
    public void The_difference_of_the_sides_is_that_of_a_slab_cut_into_slices(int pulses, double fourier) =>
        Assert.Equal(SlicedDifference(pulses, fourier), SheetWarmths.DifferenceK(1, pulses, fourier), tolerance: 0.06);

    [Fact]
    public void One_pulse_bends_at_first_like_six_times_the_rise_it_makes_and_at_rest_not_at_all()
    {
        Assert.Equal(6, SheetWarmths.DifferenceK(1, 1, 1), tolerance: 0.06);
        Assert.Equal(SheetWarmths.DifferenceK(1, 1, 5), SheetWarmths.DifferenceK(1, 50, 5), 9);
    }

    [Fact]
    public void Without_loss_the_rise_is_all_pulses_and_with_loss_it_stays_under_what_one_pulse_replaces()
    {
        Assert.Equal(12, SheetWarmths.RiseK(1.5, 8, 0), 9);
        Assert.True(SheetWarmths.RiseK(1.5, 8, 0.1) < 12);
        Assert.Equal(1.5 / (1 - Math.Exp(-0.5)), SheetWarmths.RiseK(1.5, 10_000, 0.5), 9);
    }

    /// <summary>8 W/cm² over 20 mm at 1 m/s is 160 mJ/cm² [definition]; two lamps, four passes, two layers: 2560 mJ/cm² = 25.6 kJ/m².</summary>
    [Fact]
    public void The_heat_of_a_face_is_its_dose_on_the_heat_the_sheet_takes_up()
    {
        PressDescription press = Presses.Hybrid(Presses.Mode());
        Stock sheet = Presses.Board() with { SpecificHeatJPerKgK = 1e5 };
        double rise = SheetWarmths.Of(press, press.Modes[0], sheet, 2, 0, 1220).RiseK;
        Assert.Equal(25_600 / (sheet.WeightGPerM2 / 1000 * 1e5), rise, tolerance: rise * 0.001);
    }

    [Fact]
    public void More_layers_more_ink_more_lamp_and_thinner_sheets_warm_more()
    {
        PressDescription press = Presses.Hybrid(Presses.Mode());
        Mode mode = press.Modes[0];
        Stock sheet = Presses.Board() with { ConductivityWPerMK = 0.19, SpecificHeatJPerKgK = 1400 };
        SheetWarmth warmth = SheetWarmths.Of(press, mode, sheet, 2, 20, 1220);
        Assert.True(SheetWarmths.Of(press, mode, sheet, 3, 20, 1220).RiseK > warmth.RiseK);
        Assert.True(SheetWarmths.Of(press, mode, sheet, 2, 40, 1220).DifferenceK > warmth.DifferenceK);
        Assert.True(SheetWarmths.Of(press, mode with { LampPercent = 50 }, sheet, 2, 20, 1220).RiseK < warmth.RiseK);
        Assert.True(SheetWarmths.Of(press, mode, sheet with { ThicknessMm = 2, WeightGPerM2 = 2380 }, 2, 20, 1220).RiseK > warmth.RiseK);
        Assert.Equal(SheetWarmths.DifferenceTakenK, SheetWarmths.Of(press, mode, sheet with { ConductivityWPerMK = null }, 2, 20, 1220).DifferenceK);
    }

    /// <summary>Pulses so often that they flow together: the sum of cosines comes to rest at q t / (2 k), and right after a pulse half of the six rises it makes at once come on top; the next term is under a third of a rise.</summary>
    [Fact]
    public void Many_small_pulses_come_to_the_difference_of_even_heat()
    {
        double diffusivity = 0.19 / (1190 * 1470), everyS = 0.5, thicknessMm = 3;
        double fourier = diffusivity * everyS / (thicknessMm * thicknessMm * 1e-6), eachK = 100 / (1190 * 1470 * thicknessMm / 1000);
        double even = SheetWarmths.EvenDifferenceK(100, everyS, thicknessMm, 0.19);
        Assert.Equal(even + (3 * eachK), SheetWarmths.DifferenceK(eachK, 2000, fourier), tolerance: eachK / 3);
    }

    private static double SlicedDifference(int pulses, double fourier)
    {
        const int slices = 400;
        double[] t = new double[slices], next = new double[slices];
        int steps = (int)Math.Ceiling(fourier * slices * slices / 0.4);
        double r = fourier * slices * slices / steps;
        for (int pulse = 0; pulse < pulses; pulse++)
        {
            // Between pulses the slices pass heat on; both faces are closed.
            for (int step = 0; pulse > 0 && step < steps; step++)
            {
                for (int i = 0; i < slices; i++)
                    next[i] = t[i] + (r * (t[Math.Max(0, i - 1)] - (2 * t[i]) + t[Math.Min(slices - 1, i + 1)]));
                (t, next) = (next, t);
            }

            t[slices - 1] += slices;
        }

        double moment = 0;
        for (int i = 0; i < slices; i++)
            moment += t[i] * (((i + 0.5) / slices) - 0.5) / slices;
        return 12 * moment;
    }
}
