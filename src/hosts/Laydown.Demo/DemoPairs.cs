using Laydown.Demo.Art;
using Laydown.Demo.Orders;
using SkiaSharp;

namespace Laydown.Demo;

/// <summary>Pairs of pictures of the demo's panel to try the solver on: one as it is meant, and two that ask for more than a panel can do.</summary>
public static class DemoPairs
{
    /// <summary>The marsh by day over the same marsh at night: they share their ground.</summary>
    public const string Marsh = "marsh";

    /// <summary>The dark picture by day and the bright one when lit: dark day ink holds the light back.</summary>
    public const string Swapped = "swapped";

    /// <summary>The marsh by day over the night standing on its head: nothing in one helps the other.</summary>
    public const string Crossed = "crossed";

    /// <summary>All names.</summary>
    public static IReadOnlyList<string> Names { get; } = [Marsh, Swapped, Crossed];

    /// <summary>Writes <c><i>name</i>.day.png</c> and <c><i>name</i>.night.png</c>, sRGB, 3 wide to 2 high; the same bytes every time.</summary>
    /// <param name="folder">Where to; made when missing.</param>
    /// <param name="name">One of <see cref="Names"/>.</param>
    /// <param name="widthPx">Pixels across, 30 to 20 000.</param>
    /// <returns>Full paths of both.</returns>
    /// <exception cref="ArgumentException">Another name or a size outside its range.</exception>
    public static (string Day, string Night) Write(string folder, string name, int widthPx)
    {
        if (!Names.Contains(name) || widthPx is < 30 or > 20_000)
            throw new ArgumentException(Invariant($"Pair: found {name}, {widthPx} pixels; wanted one of {string.Join(", ", Names)}, 30 to 20000 pixels."), nameof(name));
        string day = Path.Combine(Path.GetFullPath(folder), name + ".day.png"), night = Path.Combine(Path.GetFullPath(folder), name + ".night.png");
        Draw(day, name == Swapped ? Light.Night : Light.Day, widthPx, turned: false);
        Draw(night, name == Swapped ? Light.Day : Light.Night, widthPx, turned: name == Crossed);
        return (day, night);
    }

    private static void Draw(string path, Light light, int widthPx, bool turned)
    {
        Picture picture = NightPanel.Draw(light);
        int heightPx = (int)Math.Round(widthPx * picture.HeightMm / picture.WidthMm);
        using SKBitmap whole = PictureRaster.Draw(picture, 25.4 * widthPx / picture.WidthMm, SKColorSpace.CreateSrgb());
        using SKBitmap piece = new(new SKImageInfo(widthPx, heightPx, SKColorType.Rgba8888, SKAlphaType.Opaque, SKColorSpace.CreateSrgb()));
        using (SKCanvas canvas = new(piece))
        using (SKImage image = SKImage.FromBitmap(whole))
        {
            if (turned)
                canvas.RotateDegrees(180, widthPx / 2f, heightPx / 2f);
            canvas.DrawImage(image, (widthPx - whole.Width) / 2, (heightPx - whole.Height) / 2, SKSamplingOptions.Default);
        }

        using SKData png = piece.Encode(SKEncodedImageFormat.Png, 100);
        DemoFiles.Write(path, stream => png.SaveTo(stream));
    }
}
