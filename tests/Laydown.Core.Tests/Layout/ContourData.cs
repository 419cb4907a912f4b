using System.Globalization;
using Laydown.Geometry.Shapes;
using Laydown.Instances.Polygons;
using Laydown.Layout.Contours;
using Laydown.Measures;
using NetTopologySuite.Geometries;

namespace Laydown.Core.Tests.Layout;

/// <summary>Shapes for the tests of contours, and their layouts before the independent judge.</summary>
internal static class ContourData
{
    /// <summary>Length by which a layout may fall short, as the tolerance of layouts is told to users.</summary>
    public const double SlackMm = 1e-3;

    public static string File(string name)
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !System.IO.File.Exists(Path.Combine(folder, "Laydown.slnx")))
            folder = Path.GetDirectoryName(folder);
        return Path.Combine(folder!, "tests", "data", "layout", "irregular", name);
    }

    public static Shape Area(Polygon polygon) => Shape.Of(Ring(polygon.ExteriorRing), [.. polygon.InteriorRings.Select(Ring)]);

    public static IReadOnlyList<ContourPiece> Pieces(PolygonInstance instance) =>
    [
        .. instance.Items.Select((item, i) => new ContourPiece(
            Invariant($"{i}"), Area(item.Shape), item.Copies, item.Degrees is null ? ContourAngles.Free : ContourAngles.Of(item.Degrees))),
    ];

    public static IReadOnlyList<string> Faults(PolygonInstance instance, ContourResult result, PolygonAsk ask) => PolygonChecker.Faults(
        instance,
        [
            .. result.Sheets.SelectMany((sheet, board) => sheet.Spots.Select(s =>
                new PlacedPolygon(int.Parse(s.PieceId, CultureInfo.InvariantCulture), board, s.XMm, s.YMm, s.AngleDegrees))),
        ],
        ask);

    public static Polygon Polygon(params double[] xy) => new GeometryFactory().CreatePolygon(Corners(xy));

    public static Polygon Ring(double[] outer, double[] hole)
    {
        GeometryFactory factory = new();
        return factory.CreatePolygon(factory.CreateLinearRing(Corners(outer)), [factory.CreateLinearRing(Corners(hole))]);
    }

    /// <summary>A star of chance: corners at growing angles, some far out, some near.</summary>
    public static Polygon Star(Random chance)
    {
        int corners = 3 + chance.Next(9);
        double size = 20 + chance.Next(120);
        return Polygon([.. Enumerable.Range(0, corners).SelectMany(i =>
        {
            double angle = 2 * Math.PI * (i + (0.4 * chance.NextDouble())) / corners, far = size * (0.35 + (0.65 * chance.NextDouble()));
            return new[] { far * Math.Cos(angle), far * Math.Sin(angle) };
        })]);
    }

    private static Outline Ring(LineString ring) => Outline.Of([.. ring.Coordinates.Select(c => new PointMm(c.X, c.Y))], closed: true);

    private static Coordinate[] Corners(double[] xy) =>
        [.. Enumerable.Range(0, xy.Length / 2).Select(i => new Coordinate(xy[2 * i], xy[(2 * i) + 1])), new(xy[0], xy[1])];
}
