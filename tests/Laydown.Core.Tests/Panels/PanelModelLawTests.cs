using Laydown.Colour.Inks;
using Laydown.Colour.Spectra;
using Laydown.Core.Tests.Colour;
using Laydown.Optics.Looks;
using Laydown.Optics.Panels;

namespace Laydown.Core.Tests.Panels;

/// <summary>The closed form of a panel against the general stack, and its slopes against small steps.</summary>
public sealed class PanelModelLawTests
{
    public static TheoryData<string> Stacks => ["split", "first", "second", "opal", "opal-second", "thin", "textured"];

    [Theory, MemberData(nameof(Stacks))]
    public void Equals_the_general_stack_in_every_band(string which)
    {
        PanelStack stack = Of(which);
        PanelLight light = Duplex.Model(stack).At(1);
        StackOptics general = new(stack.Sheet, stack.Layers, 0.8, stack.ViewedFrom);
        double[] r = new double[36], t = new double[36], wantedR = new double[36], wantedT = new double[36];
        for (int i = 0; i < 40; i++)
        {
            double[] front = Prints.Scatter(i), back = Prints.Scatter(i + 90);
            double[] all = new double[stack.CoverageCount];
            all[stack.FirstCoverage(stack.WhiteLayers[0])] = 1;
            front.CopyTo(all, stack.FirstCoverage(stack.DayLayer));
            back.CopyTo(all, stack.FirstCoverage(stack.NightLayer));
            light.Spectra([.. front, .. back], r, t);
            general.Solve(all, wantedR, wantedT);
            for (int band = 0; band < 36; band++)
            {
                Assert.Equal(wantedR[band], r[band], tolerance: 1e-12);
                Assert.Equal(wantedT[band], t[band], tolerance: 1e-12);
            }
        }
    }

    [Theory, MemberData(nameof(Stacks))]
    public void Slopes_are_those_of_small_steps(string which)
    {
        PanelLight light = Duplex.Model(Of(which), nightLux: 80).At(0.9);
        double[] views = new double[6], slopes = new double[48], high = new double[6], low = new double[6];
        for (int i = 0; i < 10; i++)
        {
            double[] inks = [.. Prints.Scatter(i), .. Prints.Scatter(i + 50)];
            light.See(inks, views, slopes);
            for (int ink = 0; ink < 8; ink++)
            {
                double[] moved = [.. inks];
                moved[ink] = inks[ink] + 1e-5;
                light.See(moved, high);
                moved[ink] = inks[ink] - 1e-5;
                light.See(moved, low);

                // The error of a centred step of 1e-5 is 1e-10 of the third slope; views reach some hundred cd/m². The thin white's straight
                // light is read from a table of 64 straight pieces, whose corners a small step may straddle.
                for (int axis = 0; axis < 6; axis++)
                    Assert.Equal((high[axis] - low[axis]) / 2e-5, slopes[(6 * ink) + axis], tolerance: (which is "thin" or "textured" ? 2e-3 : 1e-5) * (1 + Math.Abs(slopes[(6 * ink) + axis])));
            }
        }
    }

    [Fact]
    public void A_colour_that_scatters_is_solved_as_one_that_absorbs_as_much_and_says_so()
    {
        double[] density = [.. GenericUvInks.Density(ProcessInk.Cyan)], scatter = Bands.Flat(0.2);
        LookInk milky = LookInk.TurbidColour(density, scatter);
        LookLayer colour = new(LookFace.First, [milky]), white = new(LookFace.First, [LookInk.White(8.0)]);
        PanelStack stack = new(LookSheet.Clear(0.92), [colour, white, colour], LookFace.First, new([1], 1, [1], 1));
        Assert.True(stack.ScatterLeftOut);
        Assert.False(Duplex.SplitFaces().ScatterLeftOut);
        double[] r = new double[36], t = new double[36], turbidR = new double[36], turbidT = new double[36];
        Duplex.Model(stack).At(1).Spectra([1, 1], r, t);
        new StackOptics(LookSheet.Clear(0.92), [colour, white, colour], 0.8).Solve([1, 1, 1], turbidR, turbidT);

        double apartR = Enumerable.Range(0, 36).Max(b => Math.Abs(turbidR[b] - r[b])), apartT = Enumerable.Range(0, 36).Max(b => Math.Abs(turbidT[b] - t[b]));
        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{apartR:0.000} {apartT:0.000}"));
        // Measured for S·X 0.2: 0.022 by day, 0.007 through.
        Assert.InRange(apartR, 0, 0.03);
        Assert.InRange(apartT, 0, 0.02);
    }

    private static PanelStack Of(string which) => which switch
    {
        "split" => Duplex.SplitFaces(),
        "first" => Duplex.OneFace(LookSheet.Clear(0.92), LookFace.First),
        "second" => Duplex.OneFace(LookSheet.Clear(0.92), LookFace.Second),
        "opal" => Duplex.OneFace(LookSheet.Opal(0.4, 0.5), LookFace.First),
        "opal-second" => Duplex.OneFace(LookSheet.Opal(0.2, 0.7), LookFace.Second),
        "textured" => Duplex.OneFace(LookSheet.Opal(0.2, 0.7).Textured(0.5), LookFace.First, scatter: 3),
        _ => Duplex.OneFace(LookSheet.Clear(0.92), LookFace.First, scatter: 0.8),
    };
}
