using System.Text.Json;
using Laydown.Colour.Inks;
using Laydown.Core.Tests.Colour;
using Laydown.Optics.Layers;
using Laydown.Optics.Looks;

namespace Laydown.Core.Tests.Optics;

/// <summary>Layers and stacks against the tables of another program (tests/data/optics/README.md).</summary>
public sealed class LayersReferenceTests
{
    private static readonly double SurfacesAlone = 2 * 1.5 / ((1.5 * 1.5) + 1);

    private static JsonElement.ArrayEnumerator Vectors =>
        JsonDocument.Parse(File.ReadAllBytes(PublishedTable.PathOf("optics/stack-testvectors.json"))).RootElement.EnumerateArray();

    [Fact]
    public void All_88_Kubelka_Munk_layers_agree_to_the_last_digit()
    {
        IReadOnlyList<double[]> rows = PublishedTable.Rows("optics/km-layer-reference.csv");
        Assert.Equal(88, rows.Count);
        foreach (double[] row in rows)
        {
            LayerLight layer = KubelkaMunk.Layer(row[0], row[1]);
            Assert.Equal(row[2], layer.FrontReflectance, tolerance: 1e-12);
            Assert.Equal(row[3], layer.Inward, tolerance: 1e-12);
            Assert.Equal(row[5], layer.Over(LayerLight.Symmetric(0.8, 0)).FrontReflectance, tolerance: 1e-12);

            // With K/S in the millions the table's own R∞ lost digits to a difference of large numbers: 4e-11 against 60-digit arithmetic.
            if (row[1] > 0)
                Assert.Equal(row[4], KubelkaMunk.ThickReflectance(row[0] / row[1]), tolerance: 1e-10);
        }
    }

    [Fact]
    public void Random_stacks_agree()
    {
        JsonElement[] stacks = [.. Vectors.Where(v => v.GetProperty("kind").GetString() == "star")];
        Assert.Equal(6, stacks.Length);
        foreach (JsonElement stack in stacks)
        {
            LayerLight whole = stack.GetProperty("components_Rf_Rb_Tf_Tb").EnumerateArray().Select(Layer).Aggregate((upper, lower) => upper.Over(lower));
            Same(Layer(stack.GetProperty("result_Rf_Rb_Tf_Tb")), whole);
        }
    }

    [Fact]
    public void Two_layers_of_one_paint_are_one_layer()
    {
        JsonElement[] cases = [.. Vectors.Where(v => v.GetProperty("kind").GetString() == "km-additivity")];
        Assert.Equal(3, cases.Length);
        foreach (JsonElement one in cases)
        {
            double ratio = one.GetProperty("KoverS").GetDouble();
            double[] parts = [.. one.GetProperty("SX").EnumerateArray().Select(e => e.GetDouble())];
            LayerLight stacked = KubelkaMunk.Layer(ratio * parts[0], parts[0]).Over(KubelkaMunk.Layer(ratio * parts[1], parts[1]));
            Same(Layer(one.GetProperty("single")), stacked);
        }
    }

    [Fact]
    public void Halftones_on_both_sides_of_a_white_agree_in_every_band()
    {
        JsonElement[] prints = [.. Vectors.Where(v => v.GetProperty("kind").GetString() == "duplex-halftone")];
        Assert.Equal(3, prints.Length);
        foreach (JsonElement print in prints)
        {
            double scatter = print.GetProperty("white").GetProperty("SX").GetDouble();
            double absorption = print.GetProperty("white").GetProperty("KX").GetDouble();
            StackOptics stack = TwoSided(scatter, absorption / scatter);
            double[] coverages = [1, .. Numbers(print, "front"), .. Numbers(print, "back")];
            double[] day = new double[36], night = new double[36];
            stack.SolveSpread(coverages, day, night);
            double[] wantedDay = Numbers(print, "R_day_45_0"), wantedNight = Numbers(print, "T_night_d_0");
            for (int band = 0; band < 36; band++)
            {
                // Densities are kept to 6 decimals: a solid is off by up to 1.2e-6 of its light and crossed twice. The table has 10 decimals.
                double rounding = 2.4e-6 * (coverages.Sum() - 1);
                Assert.Equal(wantedDay[band], day[band], tolerance: (rounding * wantedDay[band]) + 1e-10);
                Assert.Equal(wantedNight[band], night[band], tolerance: (rounding * wantedNight[band]) + 1e-10);
            }
        }
    }

    [Fact]
    public void The_table_of_white_densities_comes_out_to_its_last_digit()
    {
        IReadOnlyList<double[]> rows = PublishedTable.Rows("optics/white-density-tradeoff.csv");
        Assert.Equal(13, rows.Count);
        foreach (double[] row in rows)
        {
            LayerLight bare = KubelkaMunk.Layer(0.002 * row[0], row[0]);
            Assert.Equal(row[1], bare.FrontReflectance, tolerance: 6e-7);
            Assert.Equal(row[2], bare.Inward, tolerance: 6e-7);
            double[] day = new double[36], night = new double[36];
            TwoSided(row[0], 0.002).SolveSpread([1, 0, 0, 0, 0, 0, 0, 0, 0], day, night);
            Assert.Equal(row[4], day[20], tolerance: 6e-7);
            Assert.Equal(row[8], night[20], tolerance: 6e-7);
        }
    }

    private static StackOptics TwoSided(double scatter, double ratio)
    {
        LookInk[] inks = [.. Enumerable.Range(0, 4).Select(i => LookInk.Colour(GenericUvInks.Density((ProcessInk)i)))];
        return new(
            LookSheet.Clear(SurfacesAlone),
            [new(LookFace.First, [LookInk.White(scatter, ratio)]), new(LookFace.First, inks), new(LookFace.Second, inks)], backing: 0.8);
    }

    private static double[] Numbers(JsonElement owner, string name) => [.. owner.GetProperty(name).EnumerateArray().Select(e => e.GetDouble())];

    private static LayerLight Layer(JsonElement values) => new(values[0].GetDouble(), values[1].GetDouble(), values[2].GetDouble(), values[3].GetDouble());

    private static void Same(LayerLight wanted, LayerLight found)
    {
        Assert.Equal(wanted.FrontReflectance, found.FrontReflectance, tolerance: 1e-14);
        Assert.Equal(wanted.BackReflectance, found.BackReflectance, tolerance: 1e-14);
        Assert.Equal(wanted.Inward, found.Inward, tolerance: 1e-14);
        Assert.Equal(wanted.Outward, found.Outward, tolerance: 1e-14);
    }
}
