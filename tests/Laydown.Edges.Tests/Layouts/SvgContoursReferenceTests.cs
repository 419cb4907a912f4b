using System.Text;
using Laydown.Formats.Svg;
using Laydown.Geometry.Outlines;
using Laydown.Measures;
using SkiaSharp;

namespace Laydown.Edges.Tests.Layouts;

/// <summary>Path data read by Skia, which has its own reader; lengths and boxes are compared.</summary>
public sealed class SvgContoursReferenceTests
{
    [Theory]
    [InlineData("M10 20 L 110 20 110 90 Z")]
    [InlineData("m10,20 h100 v70 h-100 z m 20 20 h 10 v 10 z")]
    [InlineData("M10 80 C 40 10, 65 10, 95 80 S 150 150, 180 80")]
    [InlineData("M10 80 Q 52.5 10 95 80 T 180 80 t 40-30")]
    [InlineData("M80 80 A 45 45 0 0 0 125 125 L 125 80 Z")]
    [InlineData("M230 80 A 45 30 25 1 0 275 125 L 275 80 Z")]
    [InlineData("M80 230a45 45 0 01 45 45")]
    [InlineData("M100 100 a 5 5 30 1 1 60 0")]
    [InlineData("M1e1-2.5.5.25-3e-1.5L50,50")]
    public void Lines_have_the_length_and_the_box_that_Skia_measures(string data)
    {
        using SKPath path = SKPath.ParseSvgPathData(data);
        using SKPathMeasure measure = new(path, false, 64);
        double skia = 0;
        do
            skia += measure.Length;
        while (measure.NextContour());

        IReadOnlyList<RawContour> ours = SvgContours.Path("job.json", "path", data, 0.001).Value;
        double length = ours.Sum(c => Lengths(c.Closed ? [.. c.Points, c.Points[0]] : c.Points));

        // Skia measures in single precision and flattens on its own; a thousandth of the length is far above both.
        Assert.Equal(skia, length, 0.001 * Math.Max(1, skia));
        SKRect box = path.TightBounds;
        PointMm[] all = [.. ours.SelectMany(c => c.Points)];
        Assert.Equal(box.Left, all.Min(p => p.XMm), 0.01);
        Assert.Equal(box.Right, all.Max(p => p.XMm), 0.01);
        Assert.Equal(box.Top, all.Min(p => p.YMm), 0.01);
        Assert.Equal(box.Bottom, all.Max(p => p.YMm), 0.01);
    }

    [Fact]
    public void Shapes_transforms_units_and_view_box_bring_all_to_millimetres_with_y_upward()
    {
        const string Text = """
            <svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="100mm" viewBox="0 0 400 200">
              <rect x="20" y="20" width="40" height="20"/>
              <g transform="translate(200 100) rotate(90)"><rect width="40" height="20"/></g>
              <circle cx="300" cy="50" r="20"/><polygon points="0,200 20,200 20,180"/><text x="1" y="2">words</text>
              <g display="none"><rect width="5" height="5"/></g>
            </svg>
            """;
        SvgLines lines = SvgContours.Read("part.svg", new MemoryStream(Encoding.UTF8.GetBytes(Text)), 0.001).Value;
        RectMm[] boxes = [.. lines.Contours.Select(c => new RectMm(
            c.Points.Min(p => p.XMm), c.Points.Min(p => p.YMm), c.Points.Max(p => p.XMm) - c.Points.Min(p => p.XMm), c.Points.Max(p => p.YMm) - c.Points.Min(p => p.YMm)))];
        RectMm[] wanted = [new(10, 80, 20, 10), new(90, 30, 10, 20), new(140, 65, 20, 20), new(0, 0, 10, 10)];
        Assert.All(boxes.Zip(wanted), b =>
        {
            Assert.Equal(b.Second.XMm, b.First.XMm, 0.002);
            Assert.Equal(b.Second.YMm, b.First.YMm, 0.002);
            Assert.Equal(b.Second.WidthMm, b.First.WidthMm, 0.004);
            Assert.Equal(b.Second.HeightMm, b.First.HeightMm, 0.004);
        });
        Assert.Equal("svg-left-out", Assert.Single(lines.Findings).Code);
    }

    private static double Lengths(IReadOnlyList<PointMm> way) =>
        way.Zip(way.Skip(1)).Sum(p => Math.Sqrt(Math.Pow(p.First.XMm - p.Second.XMm, 2) + Math.Pow(p.First.YMm - p.Second.YMm, 2)));
}
