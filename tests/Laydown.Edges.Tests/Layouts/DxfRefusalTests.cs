using System.Text;
using Laydown.Formats.Dxf;
using Laydown.Measures;

namespace Laydown.Edges.Tests.Layouts;

public sealed class DxfRefusalTests
{
    [Theory]
    [InlineData("", "file: found 0 bytes")]
    [InlineData("0\nSECTION\n2\nENTITIES\n0\nLINE\n10\n0\n20\n0\n11\n5\n21\n5\n", "no EOF at its end")]
    [InlineData("hello\nworld\n", "line 1: found hello; wanted a group code")]
    [InlineData("0\nSECTION\n2\nENTITIES\n0\nLINE\n10\nwide\n20\n0\n11\n5\n21\n5\n0\nENDSEC\n0\nEOF\n", "line 8, LINE, group 10: found wide; wanted a number")]
    [InlineData("0\nSECTION\n2\nENTITIES\n0\nLINE\n10\n1\n20\n0\n11\n5\n0\nENDSEC\n0\nEOF\n", "line 5, LINE: found no group 21")]
    [InlineData("0\nSECTION\n2\nENTITIES\n0\nCIRCLE\n10\n1\n20\n0\n40\n-5\n0\nENDSEC\n0\nEOF\n", "radius -5 mm")]
    [InlineData("0\nSECTION\n2\nENTITIES\n0\nLINE\n10\n1e400\n20\n0\n11\n5\n21\n5\n0\nENDSEC\n0\nEOF\n", "found 1e400; wanted a number of usual size")]
    [InlineData("0\nSECTION\n2\nENTITIES\n0\nSPLINE\n71\n3\n40\n0\n40\n1\n10\n0\n20\n0\n10\n1\n20\n1\n0\nENDSEC\n0\nEOF\n", "2 control points for degree 3")]
    [InlineData("0\nSECTION\n2\nENTITIES\n0\nPOLYLINE\n70\n8\n0\nSEQEND\n0\nENDSEC\n0\nEOF\n", "a polyline in space or a mesh")]
    [InlineData("0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n21\n0\nENDSEC\n0\nEOF\n", "$INSUNITS: found 21; wanted mm (4)")]
    [InlineData("Some Binary DXF\r\n\u001a\0\u0001", "found binary DXF; wanted ASCII DXF")]
    public void What_cannot_be_taken_is_refused_with_line_and_entity(string text, string words)
    {
        Reading<DxfDrawing> reading = Read(text, new DxfLimits());
        Assert.Contains(words, Assert.Single(reading.Faults).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Too_many_bytes_entities_or_corners_are_refused()
    {
        string many = "0\nSECTION\n2\nENTITIES\n" + string.Concat(Enumerable.Repeat("0\nCIRCLE\n10\n0\n20\n0\n40\n500\n", 100)) + "0\nENDSEC\n0\nEOF\n";
        Assert.Contains("more than 50 entities", Read(many, new(MostEntities: 50)).Faults[0].ToString(), StringComparison.Ordinal);
        Assert.Contains("more than 1000 corners", Read(many, new(MostPoints: 1000)).Faults[0].ToString(), StringComparison.Ordinal);
        Assert.Contains("MiB", Read(many, new(MostBytes: 500)).Faults[0].ToString(), StringComparison.Ordinal);
        Assert.Contains("characters", Read("0\n" + new string('x', 10_000) + "\n", new()).Faults[0].ToString(), StringComparison.Ordinal);
    }

    private static Reading<DxfDrawing> Read(string text, DxfLimits limits)
    {
        using MemoryStream stream = new(Encoding.Latin1.GetBytes(text));
        return DxfReader.Read("part.dxf", stream, limits);
    }
}
