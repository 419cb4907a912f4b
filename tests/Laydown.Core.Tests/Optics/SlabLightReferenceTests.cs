using Laydown.Core.Tests.Colour;
using Laydown.Optics.Layers;

namespace Laydown.Core.Tests.Optics;

/// <summary>Light in slabs against another program's radiative transfer (tests/data/optics/README.md), and two fluxes beside it: where they
/// hold and where they do not.</summary>
public sealed class SlabLightReferenceTests
{
    private static IReadOnlyList<double[]> Rows => PublishedTable.Rows("optics/rte-slab-reference.csv");

    [Fact]
    public void All_216_slabs_agree()
    {
        // The table's diffuse columns carry up to 1.1e-4 of its own: 24 directions in place of 16 move ours by less than 2e-5.
        Assert.Equal(216, Rows.Count);
        foreach (double[] row in Rows)
        {
            SlabReading found = SlabLight.Of(new SlabMatter(row[3], row[2], row[1]), new Boundary(row[0]));
            Assert.Equal(row[4], found.DiffuseReflectance, tolerance: 1.2e-4);
            Assert.Equal(row[5], found.DiffuseTransmittance, tolerance: 1.2e-4);
            Assert.Equal(row[6], found.NormalReflectance, tolerance: 5e-5);
            Assert.Equal(row[7], found.NormalTransmittance, tolerance: 5e-5);
        }
    }

    [Fact]
    public void More_directions_change_nothing()
    {
        foreach (double[] row in Rows.Where((_, i) => i % 9 == 4))
        {
            SlabMatter matter = new(row[3], row[2], row[1]);
            SlabReading usual = SlabLight.Of(matter, new Boundary(row[0])), more = SlabLight.Of(matter, new Boundary(row[0]), 24);
            Assert.Equal(more.DiffuseReflectance, usual.DiffuseReflectance, tolerance: 2e-5);
            Assert.Equal(more.NormalTransmittance, usual.NormalTransmittance, tolerance: 2e-5);

            // A single direction feels the few terms of a law that throws far forward.
            Assert.Equal(more.ReflectanceAt45, usual.ReflectanceAt45, tolerance: row[1] > 0.6 ? 3e-3 : 5e-5);
        }
    }

    [Fact]
    public void The_table_holds_the_two_fluxes_of_this_product()
    {
        // Its last two columns are those fluxes; where S would be under 0 it takes none.
        foreach (double[] row in Rows)
        {
            LayerLight two = TwoFluxes(row);
            Assert.Equal(row[8], two.FrontReflectance, tolerance: 1e-6);
            Assert.Equal(row[9], two.Inward, tolerance: 1e-6);
        }
    }

    /// <summary>Largest errors of two fluxes for diffuse light, as docs/decisions/0007 states them: index, thickness times (1 − g),
    /// least and largest albedo, error of R, error of T.</summary>
    public static IEnumerable<TheoryDataRow<double, double, double, double, double, double>> Classes() =>
    [
        new(1, 0.1, 0.99, 1, 0.029, 0.029), new(1, 1, 0.99, 1, 0.022, 0.022),
        new(1, 3, 0.99, 1, 0.010, 0.007), new(1, 10, 0.99, 1, 0.009, 0.001),
        new(1, 1, 0.8, 0.8, 0.050, 0.019), new(1, 10, 0.8, 0.8, 0.050, 0.000),
        new(1, 1, 0.3, 0.3, 0.054, 0.033), new(1, 10, 0.3, 0.3, 0.057, 0.000),
        new(1.5, 0.1, 0.99, 1, 0.247, 0.247), new(1.5, 0.3, 0.99, 1, 0.199, 0.199), new(1.5, 1, 0.99, 1, 0.101, 0.102),
        new(1.5, 3, 0.99, 1, 0.034, 0.034), new(1.5, 10, 0.99, 1, 0.027, 0.009), new(1.5, 30, 0.99, 1, 0.027, 0.002),
        new(1.5, 0.1, 0.8, 0.8, 0.233, 0.276), new(1.5, 1, 0.8, 0.8, 0.058, 0.142), new(1.5, 10, 0.8, 0.8, 0.014, 0.000),
        new(1.5, 0.1, 0.3, 0.3, 0.172, 0.345), new(1.5, 1, 0.3, 0.3, 0.006, 0.198), new(1.5, 10, 0.3, 0.3, 0.014, 0.000),
    ];

    [Theory, MemberData(nameof(Classes))]
    public void Two_fluxes_fail_where_light_inside_is_not_even(
        double index, double reduced, double from, double to, double errorOfR, double errorOfT)
    {
        bool IsOfClass(double[] r) =>
            r[0] == index && r[2] >= from && r[2] <= to && Math.Abs((r[3] * (1 - r[1]) / reduced) - 1) < 0.01;
        double[][] slabs = [.. Rows.Where(IsOfClass)];
        Assert.True(slabs.Length >= 3);
        Assert.Equal(errorOfR, slabs.Max(r => Math.Abs(TwoFluxes(r).FrontReflectance - r[4])), tolerance: 0.00051);
        Assert.Equal(errorOfT, slabs.Max(r => Math.Abs(TwoFluxes(r).Inward - r[5])), tolerance: 0.00051);
    }

    private static LayerLight TwoFluxes(double[] row)
    {
        SlabMatter matter = new(row[3], row[2], row[1]);
        double absorption = 2 * matter.OpticalThickness * (1 - matter.Albedo);
        LayerLight inside = KubelkaMunk.Layer(absorption, Math.Max(0, (0.75 * matter.ReducedScatter) - (absorption / 8)));
        return row[0] > 1 ? Saunderson.Film(inside, new Boundary(row[0])) : inside;
    }
}
