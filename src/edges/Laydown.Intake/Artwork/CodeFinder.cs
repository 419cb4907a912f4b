using Laydown.Artwork.Pages;
using Laydown.Measures;
using ZXing;
using ZXing.Common;
using ZXing.Multi;
using ZXing.Multi.QrCode;

namespace Laydown.Intake.Artwork;

/// <summary>Finds bar codes on a page and measures their module and quiet zone in the picture itself.</summary>
internal static class CodeFinder
{
    // Wider clear zones are all good alike.
    private const int MostQuietModules = 20;

    // A window must be large enough to hold a code with its clear zone.
    private const int SmallestWindowPx = 300;

    private static readonly Dictionary<DecodeHintType, object> Hints = new()
    {
        [DecodeHintType.TRY_HARDER] = true,
        [DecodeHintType.POSSIBLE_FORMATS] = new List<BarcodeFormat> { BarcodeFormat.EAN_13, BarcodeFormat.EAN_8, BarcodeFormat.UPC_A, BarcodeFormat.CODE_128, BarcodeFormat.ITF, BarcodeFormat.QR_CODE },

        // Only ITF-14: shorter ones are read out of any row of stripes.
        [DecodeHintType.ALLOWED_LENGTHS] = new[] { 14 },
    };

    /// <summary>The codes found.</summary>
    public static IReadOnlyList<CodeUse> Find(GreyPicture picture)
    {
        var source = new RGBLuminanceSource(picture.Pixels, picture.Width, picture.Height, RGBLuminanceSource.BitmapFormat.Gray8);
        var found = new List<CodeUse>();
        foreach (var result in Windows(picture).SelectMany(w => Decode(source, w.Left, w.Top, w.Width, w.Height)))
        {
            // The same symbol is met again when the picture is searched in parts.
            if (Measure(picture, result) is { } code && !found.Any(f => f.Text == code.Text && f.Place.Overlaps(code.Place)))
                found.Add(code);
        }

        return found;
    }

    // The whole page first; then its four quarters, each a little over the middle: a busy picture can hide a small code from a search of the whole.
    private static IEnumerable<(int Left, int Top, int Width, int Height)> Windows(GreyPicture picture)
    {
        yield return (0, 0, picture.Width, picture.Height);
        int width = (picture.Width * 3) / 5, height = (picture.Height * 3) / 5;
        if (Math.Min(width, height) < SmallestWindowPx)
            yield break;
        foreach (int left in (int[])[0, picture.Width - width])
            foreach (int top in (int[])[0, picture.Height - height])
                yield return (left, top, width, height);
    }

    private static IEnumerable<Result> Decode(RGBLuminanceSource source, int left, int top, int width, int height)
    {
        var window = new BinaryBitmap(new HybridBinarizer(source.crop(left, top, width, height)));

        // The second reader tries every three corner squares it sees, where the first takes the likeliest three, which art can imitate.
        Result[] results =
        [
            .. new GenericMultipleBarcodeReader(new MultiFormatReader()).decodeMultiple(window, Hints) ?? [],
            .. new QRCodeMultiReader().decodeMultiple(window, Hints) ?? [],
        ];
        return results.Select(r => new Result(
            r.Text, r.RawBytes, [.. (r.ResultPoints ?? []).Where(p => p is not null).Select(p => new ResultPoint(p.X + left, p.Y + top))], r.BarcodeFormat));
    }

    private static CodeUse? Measure(GreyPicture picture, Result result)
    {
        var points = (result.ResultPoints ?? []).Where(p => p is not null).ToArray();
        return result.BarcodeFormat == BarcodeFormat.QR_CODE
            ? points.Length < 3 ? null : SquareCode(picture, result.Text, points)
            : points.Length < 2 ? null : LinearCode(picture, result, points);
    }

    private static CodeUse? LinearCode(GreyPicture picture, Result result, ResultPoint[] points)
    {
        // From the first point toward the last, along the longer axis; the code lies upright or on its side.
        ResultPoint first = points[0], last = points[^1];
        bool flat = Math.Abs(last.X - first.X) >= Math.Abs(last.Y - first.Y);
        double length = flat ? Math.Abs(last.X - first.X) : Math.Abs(last.Y - first.Y);
        double dx = (last.X - first.X) / length, dy = (last.Y - first.Y) / length;
        var along = new CodeLine(picture, first.X, first.Y, dx, dy);
        var back = new CodeLine(picture, first.X, first.Y, -dx, -dy);

        // No gap within a symbol is wider than 4 of its modules.
        double narrow = Narrowest(result.BarcodeFormat, along, length);
        int gap = (int)Math.Max(3, narrow * 4.5);
        bool guarded = result.BarcodeFormat is BarcodeFormat.EAN_13 or BarcodeFormat.UPC_A or BarcodeFormat.EAN_8;
        int start = -(guarded ? GuardEdge(back, narrow) : Edge(back, 0, gap));
        int end = guarded ? GuardEdge(along, length + narrow) : Edge(along, (int)length, gap);
        double? modules = Modules(result, along, start, end);
        if (modules is null || end <= start)
            return null;

        double module = (end - start + 1) / modules.Value;
        int most = (int)(module * MostQuietModules) + 1;
        double quiet = Math.Min(back.To(true, -start + 1, most), along.To(true, end + 1, most)) / module;
        var (up, down) = Bar(picture, first.X + (dx * start), first.Y + (dy * start), flat, dx, dy);
        var place = flat
            ? Place(picture, Math.Min(first.X + (dx * start), first.X + (dx * end)), first.Y - up, end - start + 1, up + down)
            : Place(picture, first.X - up, Math.Min(first.Y + (dy * start), first.Y + (dy * end)), up + down, end - start + 1);
        return new(Name(result.BarcodeFormat), result.Text, place, module * (flat ? picture.MmAcross : picture.MmDown), Math.Min(quiet, MostQuietModules));
    }

    /// <summary>About the width of a module: EAN and UPC points lie in the middle of the outer guards, 3 modules short of the whole width.</summary>
    private static double Narrowest(BarcodeFormat format, CodeLine line, double length)
    {
        if (format is BarcodeFormat.EAN_13 or BarcodeFormat.UPC_A)
            return length / 92;
        if (format == BarcodeFormat.EAN_8)
            return length / 64;

        int narrowest = (int)length;
        bool dark = line.IsDark(0);
        for (int step = line.To(!dark, 0, (int)length); step < length;)
        {
            dark = !dark;
            int run = line.To(!dark, step, (int)length);
            narrowest = Math.Min(narrowest, run);
            step += run;
        }

        return narrowest;
    }

    /// <summary>The last dark step of an outer guard bar, from its middle, so that art in the clear zone is not taken for a bar.</summary>
    private static int GuardEdge(CodeLine line, double middle)
    {
        int step = (int)Math.Round(middle);
        return step + Math.Max(0, line.To(false, step, 1000) - 1);
    }

    /// <summary>The farthest dark step that is followed by no light gap wider than allowed before it.</summary>
    private static int Edge(CodeLine line, int from, int gap)
    {
        int edge = from;
        for (int step = from; step - edge <= gap; step++)
        {
            if (line.IsDark(step))
                edge = step;
        }

        return edge;
    }

    /// <summary>How many modules wide the symbol is.</summary>
    private static double? Modules(Result result, CodeLine line, int start, int end)
    {
        switch (result.BarcodeFormat)
        {
            case BarcodeFormat.EAN_13 or BarcodeFormat.UPC_A:
                return 95;
            case BarcodeFormat.EAN_8:
                return 67;
            case BarcodeFormat.ITF:
                // Its wide bars are 2 to 3 narrow ones: the four narrow bars of the start tell the module.
                int four = line.To(false, start, 1000);
                four += line.To(true, start + four, 1000);
                four += line.To(false, start + four, 1000);
                four += line.To(true, start + four, 1000);
                return (end - start + 1) / (four / 4.0);
            default:
                // Code 128: 11 modules a character and 2 at the end; its first bar is 2 wide.
                double guess = line.To(false, start, 1000) / 2.0;
                return guess <= 0 ? null : (Math.Max(3, Math.Round((((end - start + 1) / guess) - 2) / 11)) * 11) + 2;
        }
    }

    /// <summary>How far a bar reaches to both sides across the code.</summary>
    private static (double Before, double After) Bar(GreyPicture picture, double x, double y, bool flat, double dx, double dy)
    {
        var (ax, ay) = flat ? (0.0, 1.0) : (1.0, 0.0);
        double inX = x + (dx * 0.5), inY = y + (dy * 0.5);
        int most = Math.Max(picture.Width, picture.Height);
        return (new CodeLine(picture, inX, inY, -ax, -ay).To(false, 0, most), new CodeLine(picture, inX, inY, ax, ay).To(false, 0, most));
    }

    private static CodeUse SquareCode(GreyPicture picture, string text, ResultPoint[] p)
    {
        // Centres of the three corner squares: lower left, upper left, upper right. The corner squares are 7 modules wide.
        double across = Distance(p[1], p[2]), down = Distance(p[1], p[0]);
        double guess = (HalfSquare(picture, p[1], p[2]) + HalfSquare(picture, p[2], p[1]) + HalfSquare(picture, p[1], p[0])) / 3 / 3.5;
        double side = (across + down) / 2;
        int version = (int)Math.Clamp(Math.Round(((side / guess) + 7 - 17) / 4), 1, 40);
        double module = side / (17 + (4 * version) - 7);

        var xs = new[] { p[0].X, p[1].X, p[2].X, p[0].X + p[2].X - p[1].X };
        var ys = new[] { p[0].Y, p[1].Y, p[2].Y, p[0].Y + p[2].Y - p[1].Y };
        double margin = 3.5 * module;
        var place = Place(picture, xs.Min() - margin, ys.Min() - margin, xs.Max() - xs.Min() + (2 * margin), ys.Max() - ys.Min() + (2 * margin));
        double quiet = new[] { Clear(picture, p[1], p[2], module), Clear(picture, p[2], p[1], module), Clear(picture, p[1], p[0], module), Clear(picture, p[0], p[1], module) }.Min();
        return new("QR", text, place, module * (picture.MmAcross + picture.MmDown) / 2, quiet);
    }

    /// <summary>From the centre of a corner square, away from another one, to its outer edge: 3.5 modules.</summary>
    private static double HalfSquare(GreyPicture picture, ResultPoint centre, ResultPoint other)
    {
        var line = Away(picture, centre, other);
        int dark = line.To(false, 0, 2000);
        int light = line.To(true, dark, 2000);
        int rim = line.To(false, dark + light, 2000);
        return dark + light + rim;
    }

    /// <summary>Clear modules beyond the outer edge of a corner square.</summary>
    private static double Clear(GreyPicture picture, ResultPoint centre, ResultPoint other, double module)
    {
        int edge = (int)Math.Round(HalfSquare(picture, centre, other));
        return Math.Min(MostQuietModules, Away(picture, centre, other).To(true, edge, (int)(module * MostQuietModules) + 1) / module);
    }

    private static CodeLine Away(GreyPicture picture, ResultPoint centre, ResultPoint other)
    {
        double dx = centre.X - other.X, dy = centre.Y - other.Y;
        double length = Math.Sqrt((dx * dx) + (dy * dy));
        return new(picture, centre.X, centre.Y, dx / length, dy / length);
    }

    private static double Distance(ResultPoint a, ResultPoint b) => Math.Sqrt(Math.Pow(a.X - b.X, 2) + Math.Pow(a.Y - b.Y, 2));

    private static RectMm Place(GreyPicture picture, double left, double top, double width, double height) =>
        new(left * picture.MmAcross, (picture.Height - top - height) * picture.MmDown, width * picture.MmAcross, height * picture.MmDown);

    private static string Name(BarcodeFormat format) => format switch
    {
        BarcodeFormat.EAN_13 => "EAN-13",
        BarcodeFormat.EAN_8 => "EAN-8",
        BarcodeFormat.UPC_A => "UPC-A",
        BarcodeFormat.ITF => "ITF-14",
        _ => "Code 128",
    };
}
