using Laydown.Geometry.Shapes;
using Laydown.Measures;

namespace Laydown.Layout.Contours;

/// <summary>A stock made ready for the search: the box pieces may lie in, and what of it they may not lie on, as forms that stay.</summary>
internal sealed class BoardKind
{
    private const double Straight = 1e-9;

    internal BoardKind(ContourStock stock, double halfGap, int firstForm, double largest)
    {
        Stock = stock;
        RectMm bounds = stock.Area.Bounds;
        (Left, Bottom) = (bounds.XMm, bounds.YMm);
        double inward = halfGap - stock.EdgeMarginMm;
        bool whole = IsRectangle(stock.Area);
        Shape inside = whole ? Shape.Of(bounds.Grown(inward)) : inward == 0 ? stock.Area : stock.Area.Offset(inward < 0 ? inward * Form.Rounding : inward);
        RectMm box = inside.Bounds, roomy = box.Grown(Form.Slack * largest);
        Box = new((float)(roomy.XMm - Left), (float)(roomy.YMm - Bottom), (float)(roomy.RightMm - Left), (float)(roomy.TopMm - Bottom));
        IEnumerable<Shape> outside = whole || inside.IsEmpty ? [] : Shape.Of(box).Less(inside).OuterRings().Select(r => Shape.Of(r));
        IEnumerable<Shape> keepOuts = (stock.KeepOuts ?? []).Where(k => !k.IsEmpty).Select(k => k.Offset(halfGap * Form.Rounding));
        Fixed = [.. outside.Concat(keepOuts).Where(s => s.AreaMm2 > Straight * largest * largest).Select((s, i) => Form.Fixed(firstForm + i, s, largest))];
        UsableArea = Math.Max(0, inside.AreaMm2 - keepOuts.Sum(k => k.AreaMm2));
    }

    internal static bool IsRectangle(Shape area) => area.AreaMm2 >= area.Bounds.WidthMm * area.Bounds.HeightMm * (1 - Straight);

    internal ContourStock Stock { get; }

    /// <summary>Lower left corner of the stock's own coordinates.</summary>
    internal double Left { get; }

    /// <summary>See <see cref="Left"/>.</summary>
    internal double Bottom { get; }

    /// <summary>Where pieces with half the gap around them may lie, from the lower left corner.</summary>
    internal Bay Box { get; }

    internal IReadOnlyList<Form> Fixed { get; }

    /// <summary>Area pieces may take, gaps apart, mm².</summary>
    internal double UsableArea { get; }

    /// <summary>Where a fixed form stands, from the lower left corner.</summary>
    internal Pose FixedPose(int i, int bay) => new(bay, 0, (float)(Fixed[i].Centre.XMm - Left), (float)(Fixed[i].Centre.YMm - Bottom));
}
