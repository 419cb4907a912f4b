using Laydown.Geometry.Shapes;
using Laydown.Measures;

namespace Laydown.Layout.Contours;

/// <summary>A shape made ready for the search: grown by half the gap, simplified outward, centred, with its circles, at every angle it may take.</summary>
internal sealed class Form
{
    /// <summary>Share of a shape's area that simplifying may add.</summary>
    private const double SimplerShare = 0.0008;

    /// <summary>Growth that takes up what single precision loses, as a share of the largest side of all shapes.</summary>
    internal const double Slack = 5e-7;

    /// <summary>What an offset is lengthened by, so that the straight pieces of its round corners keep the whole distance: 1 / cos(π / 64).</summary>
    internal const double Rounding = 1.0012061;

    private readonly Turned?[] turned;
    private readonly Turned?[] quarters = new Turned?[4];

    private Form(int index, IReadOnlyList<double> degrees, PointMm centre, List<List<PointMm>> bare, double growBy, double drawnArea)
    {
        List<List<PointMm>> rings = [.. bare.Select(r => Contours.Rings.Grown(r, growBy))];
        (Index, Degrees, Centre, Rings, DrawnArea) = (index, degrees, centre, rings, drawnArea);
        (Bare, GrownBy) = ([.. bare.SelectMany(r => r)], growBy);
        turned = new Turned?[degrees.Count];
        double area = rings.Sum(Contours.Rings.Area);
        Poles = Contours.Poles.Of(rings, area);
        HullRoot = (float)Math.Sqrt(Contours.Rings.HullArea(rings));
        Reach = (float)(2 * rings.Max(r => r.Max(p => Math.Sqrt((p.XMm * p.XMm) + (p.YMm * p.YMm)))));
    }

    /// <summary>Number among the forms of one search.</summary>
    internal int Index { get; }

    internal IReadOnlyList<double> Degrees { get; }

    /// <summary>The point of the drawn shape that the form turns about.</summary>
    internal PointMm Centre { get; }

    /// <summary>Rings about the centre, material on the left.</summary>
    internal List<List<PointMm>> Rings { get; }

    /// <summary>Corners before they grew by the slack, and that slack.</summary>
    internal PointMm[] Bare { get; }

    /// <summary>See <see cref="Bare"/>.</summary>
    internal double GrownBy { get; }

    /// <summary>Area as drawn, without gap.</summary>
    internal double DrawnArea { get; }

    internal List<Pole> Poles { get; }

    /// <summary>Square root of the area of the convex hull.</summary>
    internal float HullRoot { get; }

    /// <summary>Diameter of the circle about the centre that holds the form.</summary>
    internal float Reach { get; }

    /// <summary>Whether another form can lie in a hole of this one.</summary>
    internal bool HasHoles => Rings.Count > 1;

    /// <summary>A form that stays: as drawn, and not simplified.</summary>
    internal static Form Fixed(int index, Shape shape, double largest) => Of(index, shape, [0], 0, largest, 0);

    /// <summary>A piece.</summary>
    /// <param name="index">Number among the forms of one search.</param>
    /// <param name="shape">As drawn.</param>
    /// <param name="degrees">Angles it may take.</param>
    /// <param name="growBy">Half the gap.</param>
    /// <param name="largest">Largest side of all pieces.</param>
    internal static Form Of(int index, Shape shape, IReadOnlyList<double> degrees, double growBy, double largest) =>
        Of(index, shape, degrees, growBy, largest, SimplerShare);

    private static Form Of(int index, Shape shape, IReadOnlyList<double> degrees, double growBy, double largest, double simplerShare)
    {
        Shape grown = growBy > 0 ? shape.Offset(growBy * Rounding) : shape;
        List<List<PointMm>> rings = Contours.Rings.Of(grown);
        rings = OutwardRings.Simplify(rings, simplerShare * shape.AreaMm2);
        RectMm box = grown.Bounds;
        PointMm centre = new(box.XMm + (box.WidthMm / 2), box.YMm + (box.HeightMm / 2));
        List<List<PointMm>> bare = [.. rings.Select(r => new List<PointMm>(r.Select(p => new PointMm(p.XMm - centre.XMm, p.YMm - centre.YMm))))];
        return new(index, degrees, centre, bare, Slack * largest, shape.AreaMm2);
    }

    /// <summary>The form at one of its angles, made when first asked for.</summary>
    internal Turned At(int angle) => turned[angle] ??= new(this, angle, Degrees[angle]);

    /// <summary>The form turned by whole quarters, also those it may not take itself.</summary>
    internal Turned AtQuarter(int quarter) => quarters[quarter] ??= new(this, -1, 90 * quarter);
}
