using System.Globalization;
using Laydown.Edges.Tests.Orders;
using Laydown.Formats.Dxf;
using Laydown.Geometry.Outlines;
using Laydown.Measures;

namespace Laydown.Edges.Tests.Layouts;

/// <summary>Drawings written and measured by ezdxf 0.18, which knows nothing of the product; how is told in the README beside them.</summary>
public sealed class DxfReferenceTests
{
    private static readonly string Folder = Path.Combine(Checkout.Root, "tests", "data", "layout", "dxf");

    /// <summary>All entities of all three files: kind, length and box, flattened there to 0.0001 of a unit.</summary>
    public static IEnumerable<TheoryDataRow<string, int, string, double[]>> Entities() => File.ReadLines(Path.Combine(Folder, "kinds.csv")).Skip(1)
        .Select(l => l.Split(',')).GroupBy(c => c[0]).SelectMany(g => g.Select((c, i) => new TheoryDataRow<string, int, string, double[]>(
            c[0], i, c[1], [.. c.Skip(2).Select(n => double.Parse(n, CultureInfo.InvariantCulture))])));

    [Theory, MemberData(nameof(Entities))]
    public void Every_entity_has_the_length_and_the_box_that_the_other_program_measures(string file, int number, string kind, double[] wanted)
    {
        // Flattened to 0.001 mm here, to 0.0001 of an inch there; the other program draws arcs as cubic curves, a quarter circle each at
        // most, which leave the circle by up to 2.8e-4 of its radius.
        DxfDrawing drawing = Read(file, 0.001);
        RawContour line = drawing.Contours[number];
        Assert.EndsWith(kind, line.Field, StringComparison.Ordinal);
        IReadOnlyList<PointMm> way = line.Closed ? [.. line.Points, line.Points[0]] : line.Points;
        double length = way.Zip(way.Skip(1)).Sum(p => Math.Sqrt(Math.Pow(p.First.XMm - p.Second.XMm, 2) + Math.Pow(p.First.YMm - p.Second.YMm, 2)));
        Assert.Equal(wanted[0], length, 0.02 + (3e-4 * wanted[0]));
        double[] box = [way.Min(p => p.XMm), way.Min(p => p.YMm), way.Max(p => p.XMm), way.Max(p => p.YMm)];
        double slack = 0.006 + (3e-4 * Math.Max(wanted[3] - wanted[1], wanted[4] - wanted[2]));
        Assert.All(box.Zip(wanted.Skip(1)), b => Assert.Equal(b.Second, b.First, slack));
    }

    [Theory]
    [InlineData("kinds-r12", 5, "no $INSUNITS")]
    [InlineData("kinds-r2000", 9, null)]
    [InlineData("kinds-inch", 9, "$INSUNITS 1")]
    public void A_unit_that_is_missing_or_is_no_mm_is_told_and_text_is_left_out(string file, int lines, string? unit)
    {
        DxfDrawing drawing = Read(file, 0.05);
        Assert.Equal(lines, drawing.Contours.Count);
        Assert.Contains(drawing.Findings, f => f.Code == "dxf-left-out" && f.What.StartsWith("TEXT", StringComparison.Ordinal));
        Assert.Equal(unit, drawing.Findings.FirstOrDefault(f => f.Code == "dxf-units")?.Measured);
    }

    private static DxfDrawing Read(string file, double tolerance)
    {
        using FileStream stream = File.OpenRead(Path.Combine(Folder, file + ".dxf"));
        return DxfReader.Read(file + ".dxf", stream, new DxfLimits(), tolerance).Value;
    }
}
