using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Shop.Layout;
using NetTopologySuite.Geometries;
using Area = NetTopologySuite.Geometries.Geometry;

namespace Laydown.Edges.Tests.PressFiles;

/// <summary>Each pixel of a sheet belongs to the piece whose contour is near, and to no other, asked of a geometry library apart from the code under test.</summary>
public sealed class NestedPiecesLawTests
{
    private const int Ppi = 100;
    private const double Mm = 25.4 / Ppi;

    [Fact]
    public async Task Every_piece_shows_its_picture_within_its_contour_and_leaves_the_others_theirs()
    {
        using Bench bench = new();
        await bench.MakeAsync(new Painter(bench.Pages, (page, plate, x, y, _, _) => Math.Max((byte)1, Painter.Noise(page, plate, x, y))), NestedPieces.Run(Ppi));
        (byte[] pixels, int width, int height, _) = Bench.Vips(bench.InRun("sheet-01-layer-1-colour.tif"));
        Area[] cuts = [.. NestedPieces.Placements.Select(p => Lying(p))];
        Assert.All(cuts, one => Assert.All(cuts.Where(c => c != one), other => Assert.InRange(one.Distance(other), 5, 200)));

        int inside = 0, bare = 0;
        for (int y = 0; y < height; y += 3)
        {
            for (int x = 0; x < width; x += 3)
            {
                Point at = new((x + 0.5) * Mm, 90 - ((y + 0.5) * Mm));
                byte cyan = pixels[((y * width) + x) * 4];
                double[] far = [.. cuts.Select(c => c.Distance(at))];
                int near = Array.FindIndex(far, d => d < ItemContours.KeptBleedMm - (2 * Mm));
                if (near >= 0 && Picture(NestedPieces.Placements[near], at) is { } wanted)
                {
                    Assert.Equal(wanted, cyan);
                    inside++;
                }
                else if (far.Min() > ItemContours.KeptBleedMm + (2 * Mm))
                {
                    Assert.Equal(0, cyan);
                    bare++;
                }
            }
        }

        Assert.True(inside > 3000 && bare > 3000, Invariant($"{inside} inside, {bare} bare"));
    }

    private static Polygon Lying(Placement placed)
    {
        Coordinate[] ring = [.. NestedPieces.Triangle.Append(NestedPieces.Triangle[0]).Select(p => On(placed, p))];
        return new GeometryFactory().CreatePolygon(ring);
    }

    private static Coordinate On(Placement placed, PointMm p)
    {
        (double x, double y) = (placed.Place.XMm, placed.Place.YMm);
        return placed.AngleDegrees switch
        {
            90 => new(x + 40 - p.YMm, y + p.XMm),
            180 => new(x + 60 - p.XMm, y + 40 - p.YMm),
            270 => new(x + p.YMm, y + 60 - p.XMm),
            _ => new(x + p.XMm, y + p.YMm),
        };
    }

    // The pixel of the upright picture that is seen there, by whole pixels; null near its edges, where rounding decides.
    private static byte? Picture(Placement placed, Point at)
    {
        (int columns, int rows) = (Px(60), Px(40));
        int left = Px(placed.Place.XMm), top = Px(90) - Px(placed.Place.TopMm);
        int x = (int)(at.X / Mm) - left, y = (int)((90 - at.Y) / Mm) - top;
        (int u, int v) = placed.AngleDegrees switch
        {
            90 => (columns - 1 - y, x),
            180 => (columns - 1 - x, rows - 1 - y),
            270 => (y, rows - 1 - x),
            _ => (x, y),
        };
        return u >= 0 && v >= 0 && u < columns && v < rows ? Math.Max((byte)1, Painter.Noise("T-1-1#1", "Cyan", u, v)) : null;
    }

    private static int Px(double mm) => (int)Math.Round(mm / Mm, MidpointRounding.AwayFromZero);
}
