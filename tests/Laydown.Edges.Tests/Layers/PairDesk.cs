using Laydown.Edges.Tests.Artwork;
using Laydown.Intake.Artwork;
using Laydown.Intake.Layers;
using Laydown.Measures;
using Laydown.Shop.Layers;
using NetVips;
using SkiaSharp;

namespace Laydown.Edges.Tests.Looks;

/// <summary>Pictures written by the test, and the reader of pairs over them.</summary>
internal sealed class PairDesk : IDisposable
{
    private readonly WorkFolder work = new();

    public string Scratch => work.Scratch;

    public IntakeLimits Limits => work.Limits;

    public string File(string name) => work.File(name);

    public string Write(string name, byte[] bytes) => work.Write(name, bytes);

    /// <summary>An sRGB picture whose pixels are given by a function; tagged unless said otherwise.</summary>
    public string Png(string name, int width, int height, Func<int, int, (byte, byte, byte)> at, bool tagged = true)
    {
        using SKBitmap bitmap = new(new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque, tagged ? SKColorSpace.CreateSrgb() : null));
        for (int y = 0; y < height; y++)
        {
            for (int x = 0; x < width; x++)
            {
                (byte r, byte g, byte b) = at(x, y);
                bitmap.SetPixel(x, y, new(r, g, b));
            }
        }

        using SKData data = bitmap.Encode(SKEncodedImageFormat.Png, 100);
        return Write(name, data.ToArray());
    }

    /// <summary>A picture with its profile embedded, through the library of pictures.</summary>
    public string Saved(string name, int width, int height, Func<int, int, (byte, byte, byte)> at, Action<Image, string> save)
    {
        byte[] rgb = new byte[3 * width * height];
        for (int y = 0, to = 0; y < height; y++)
        {
            for (int x = 0; x < width; x++, to += 3)
                (rgb[to], rgb[to + 1], rgb[to + 2]) = at(x, y);
        }

        using Image image = Image.NewFromMemory(rgb, width, height, 3, Enums.BandFormat.Uchar).Copy(interpretation: Enums.Interpretation.Srgb);
        save(image, File(name));
        return File(name);
    }

    /// <summary>A request for a piece that is as many pixels as said at 100 ppi.</summary>
    public static PairRequest Request(string day, string night, int width, int height, PairWish? wish = null, double bleedPx = 0)
    {
        const double Ppi = 100;
        return new(
            day, night, wish ?? Wish(), new SizeMm(width * 25.4 / Ppi, height * 25.4 / Ppi), bleedPx * 25.4 / Ppi, Ppi, WorkFolder.CmykProfile);
    }

    public static PairWish Wish(PairPlacing placing = PairPlacing.Careful, params IReadOnlyList<PairPoint> points) =>
        new(new("", 1, null), new("", 1, null), placing, placing, points);

    public async Task<Reading<PairFile>> ReadAsync(PairRequest request, CancellationToken cancellation = default) =>
        await new PairPictures(Limits).ReadAsync(request, null, cancellation);

    /// <summary>L*, a*, b* of a pixel of the day or night picture.</summary>
    public static (float L, float A, float B) At(PairFile pair, int x, int y, bool night)
    {
        float[] row = new float[PairFile.Values * pair.Width];
        pair.Read(y, 1, row);
        int at = (PairFile.Values * x) + (night ? 3 : 0);
        return (row[at], row[at + 1], row[at + 2]);
    }

    public void Dispose() => work.Dispose();
}
