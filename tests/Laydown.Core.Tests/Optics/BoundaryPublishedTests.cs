using Laydown.Core.Tests.Colour;
using Laydown.Optics.Layers;

namespace Laydown.Core.Tests.Optics;

/// <summary>Reflectance of a boundary against the table of another program, 8 decimals, and a printed value.</summary>
public sealed class BoundaryPublishedTests
{
    [Fact]
    public void All_indices_of_the_table_agree_to_the_last_digit()
    {
        IReadOnlyList<double[]> rows = PublishedTable.Rows("optics/fresnel-diffuse.csv");
        Assert.Equal(14, rows.Count);
        foreach (double[] row in rows)
        {
            Boundary boundary = new(row[0]);
            Assert.Equal(row[1], boundary.Normal, tolerance: 5.1e-9);
            Assert.Equal(row[2], boundary.At45, tolerance: 5.1e-9);
            Assert.Equal(row[4], boundary.DiffuseOutside, tolerance: 5.1e-9);
            Assert.Equal(row[5], boundary.DiffuseInside, tolerance: 5.1e-9);
            Assert.Equal(row[6], boundary.InFrom45, tolerance: 5.1e-9);
            Assert.Equal(row[7], boundary.OutNormal, tolerance: 5.1e-9);
        }
    }

    [Fact]
    public void Ink_in_air_has_the_well_known_values()
    {
        // [Judd1942] prints 0.092 from outside and 0.596 from inside for n = 1.50.
        Assert.Equal(0.092, Boundary.Ink.DiffuseOutside, tolerance: 0.0005);
        Assert.Equal(0.596, Boundary.Ink.DiffuseInside, tolerance: 0.0005);
    }

    [Fact]
    public void Acrylic_in_air_has_the_values_of_its_index_at_589_nm()
    {
        // n = 1.4914 by another program: 0.0389, 0.0490, 0.0905 and 0.5911.
        Boundary acrylic = new(1.4914);
        Assert.Equal(0.0389, acrylic.Normal, tolerance: 0.00006);
        Assert.Equal(0.0490, acrylic.At45, tolerance: 0.00006);
        Assert.Equal(0.0905, acrylic.DiffuseOutside, tolerance: 0.00006);
        Assert.Equal(0.5911, acrylic.DiffuseInside, tolerance: 0.00006);
    }

    [Fact]
    public void The_index_of_air_makes_no_boundary()
    {
        Boundary none = new(1);
        Assert.Equal(0, none.DiffuseOutside, tolerance: 1e-12);
        Assert.Equal(0, none.DiffuseInside, tolerance: 1e-12);
        Assert.Throws<ArgumentOutOfRangeException>(() => new Boundary(0.9));
    }
}
