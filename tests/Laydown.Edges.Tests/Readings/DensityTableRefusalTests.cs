using System.Text;
using Laydown.Colour.Densities;
using Laydown.Formats.Readings;
using Laydown.Measures;

namespace Laydown.Edges.Tests.Readings;

/// <summary>A table of density weights is taken whole or refused with its line.</summary>
public sealed class DensityTableRefusalTests
{
    [Fact]
    public void A_whole_table_is_taken()
    {
        DensityTable table = Read("nm,Visual,Red\r\n400,1,0\r\n420,2,0.5\r\n440,1,3\r\n").Value;
        Assert.Equal(("status-own", 400, 20), (table.Name, table.FirstNm, table.StepNm));
        Assert.Equal(["Visual", "Red"], table.Channels);

        // Weights 0, 0.5, 3 over factors 0.1, 0.2, 0.3: 1.0 of 3.5.
        Assert.Equal(-Math.Log10(1.0 / 3.5), table.Of(new(400, 20, [0.1, 0.2, 0.3]), 1), tolerance: 1e-12);
    }

    [Theory]
    [InlineData("lines", "nm,Visual\n400,1\n")]
    [InlineData("line 1", "Visual,Red\n400,1\n410,1\n")]
    [InlineData("line 3", "nm,Visual\n400,1\n410,-1\n")]
    [InlineData("line 3", "nm,Visual\n400,1\n410,NaN\n")]
    [InlineData("line 3", "nm,Visual\n400,1\n410,1,1\n")]
    [InlineData("line 4", "nm,Visual\n400,1\n410,1\n430,1\n")]
    [InlineData("nm", "nm,Visual\n410,1\n400,1\n")]
    [InlineData("Red", "nm,Visual,Red\n400,1,0\n410,1,0\n")]
    public void A_bad_table_is_refused_with_its_place(string field, string text)
    {
        Reading<DensityTable> reading = Read(text);
        Assert.False(reading.IsTaken);
        Assert.Equal(field, reading.Faults[0].Field);
    }

    private static Reading<DensityTable> Read(string text) => DensityTableCsv.Read("status-own.csv", Encoding.UTF8.GetBytes(text));
}
