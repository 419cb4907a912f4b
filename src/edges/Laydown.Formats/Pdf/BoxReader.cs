using Laydown.Measures;
using UglyToad.PdfPig.Tokens;

namespace Laydown.Formats.Pdf;

/// <summary>Reads the boxes of a page.</summary>
internal static class BoxReader
{
    private const double MmPerUnit = 25.4 / 72;

    /// <summary>The boxes, or why the page cannot be taken.</summary>
    public static Reading<PageBoxes> Read(PdfObjects objects, DictionaryToken page, string file, int number, double mostSideMm)
    {
        double[]? media = Box(objects, objects.Inherited(page, "MediaBox"));
        if (media is null)
            return Reading.Refused<PageBoxes>(new InputFault(file, number, "MediaBox", "no box with an area", "four numbers that span an area"));

        double unit = objects.Number(page, "UserUnit") is > 0 and < 1e7 and double given ? given : 1;
        int rotation = Rotation(objects, page);
        double side = Math.Max(media[2] - media[0], media[3] - media[1]) * unit * MmPerUnit;
        if (side > mostSideMm)
            return Reading.Refused<PageBoxes>(new InputFault(file, number, "MediaBox × UserUnit", Invariant($"{side:0} mm"), Invariant($"at most {mostSideMm:0} mm a side")));

        var toMm = ToMm(media, rotation, unit * MmPerUnit);
        var whole = toMm.MapBox(media[0], media[1], media[2], media[3]);
        var trim = Within(media, Box(objects, Entry(page, "TrimBox")));
        var bleed = Within(media, Box(objects, Entry(page, "BleedBox")));
        var trimMm = trim is null ? new RectMm(0, 0, whole.WidthMm, whole.HeightMm) : toMm.MapBox(trim[0], trim[1], trim[2], trim[3]);
        var bleedMm = bleed is null ? trimMm : toMm.MapBox(bleed[0], bleed[1], bleed[2], bleed[3]);
        return Reading.Of(new PageBoxes(
            unit, rotation, new SizeMm(whole.WidthMm, whole.HeightMm), trimMm, bleedMm, trim is not null, bleed is not null, toMm));
    }

    private static IToken? Entry(DictionaryToken page, string key) => page.Data.GetValueOrDefault(key);

    /// <summary>Left, bottom, right, top, whatever the order of the corners; null without an area.</summary>
    private static double[]? Box(PdfObjects objects, IToken? token)
    {
        if (objects.Numbers(token, 4) is not { } v)
            return null;
        double[] box = [Math.Min(v[0], v[2]), Math.Min(v[1], v[3]), Math.Max(v[0], v[2]), Math.Max(v[1], v[3])];
        return box[2] > box[0] && box[3] > box[1] && box.All(b => Math.Abs(b) < 1e9) ? box : null;
    }

    /// <summary>A box counts only where it lies on the media.</summary>
    private static double[]? Within(double[] media, double[]? box)
    {
        if (box is null)
            return null;
        double[] cut = [Math.Max(box[0], media[0]), Math.Max(box[1], media[1]), Math.Min(box[2], media[2]), Math.Min(box[3], media[3])];
        return cut[2] > cut[0] && cut[3] > cut[1] ? cut : null;
    }

    private static int Rotation(PdfObjects objects, DictionaryToken page)
    {
        double turn = objects.Inherited(page, "Rotate") is NumericToken number && double.IsFinite(number.Double) ? number.Double : 0;
        return (int)(((turn % 360) + 360) % 360) / 90 * 90;
    }

    /// <summary>Media corner to the origin, then the clockwise turn, then units to mm.</summary>
    private static Affine ToMm(double[] media, int rotation, double mm)
    {
        double width = media[2] - media[0];
        double height = media[3] - media[1];
        var turn = rotation switch
        {
            90 => new Affine(0, -1, 1, 0, 0, width),
            180 => new Affine(-1, 0, 0, -1, width, height),
            270 => new Affine(0, 1, -1, 0, height, 0),
            _ => Affine.Identity,
        };
        return new Affine(1, 0, 0, 1, -media[0], -media[1]).Then(turn).Then(new Affine(mm, 0, 0, mm, 0, 0));
    }
}
