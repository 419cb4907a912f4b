using Laydown.Layout.Packing;
using Laydown.Measures;

namespace Laydown.Layout.Hands;

/// <summary>A sheet in whole micrometres from the corner of its printable part, everything on it and it itself grown by one gap.</summary>
/// <param name="Area">The printable part.</param>
/// <param name="Rules">What it was made from.</param>
internal sealed record GrownSheet(Box Area, HandRules Rules)
{
    internal static GrownSheet Of(HandRules rules)
    {
        RectMm printable = rules.Printable;
        int gap = Micro.Up(rules.GapMm);
        return new(new(0, 0, Micro.Down(printable.WidthMm) + gap, Micro.Down(printable.HeightMm) + gap), rules);
    }

    /// <summary>A rectangle of the sheet, grown.</summary>
    internal Box Grown(RectMm place)
    {
        RectMm printable = Rules.Printable;
        int gap = Micro.Up(Rules.GapMm);
        return new(
            Nearest(place.XMm - printable.XMm), Nearest(place.YMm - printable.YMm), Micro.Up(place.WidthMm) + gap, Micro.Up(place.HeightMm) + gap);
    }

    /// <summary>A place nothing may lie in, grown on all sides so that pieces keep the gap to it.</summary>
    internal Box KeptOut(RectMm place)
    {
        Box box = Grown(place);
        int gap = Micro.Up(Rules.GapMm);
        return new(box.X - gap, box.Y - gap, box.W + gap, box.H + gap);
    }

    /// <summary>Left edge and lower edge of a box in mm on the sheet.</summary>
    internal (double XMm, double YMm) Corner(Box box) =>
        (Math.Round(Rules.Printable.XMm + Micro.Mm(box.X), 3), Math.Round(Rules.Printable.YMm + Micro.Mm(box.Y), 3));

    /// <summary>A bare rectangle as it comes off the sheet: the margin goes with it where it lies at an edge, the kerf is lost elsewhere.</summary>
    internal RectMm Offcut(Box bare, SizeMm sheet)
    {
        RectMm printable = Rules.Printable;
        double left = bare.X <= 0 ? 0 : printable.XMm + Micro.Mm(bare.X), low = bare.Y <= 0 ? 0 : printable.YMm + Micro.Mm(bare.Y);
        double right = bare.Right >= Area.Right ? sheet.WidthMm : printable.XMm + Micro.Mm(bare.Right) - Rules.GapMm;
        double top = bare.Top >= Area.Top ? sheet.HeightMm : printable.YMm + Micro.Mm(bare.Top) - Rules.GapMm;
        return new(left, low, Math.Max(0, right - left), Math.Max(0, top - low));
    }

    private static int Nearest(double mm) => checked((int)Math.Round(mm * 1000));
}
