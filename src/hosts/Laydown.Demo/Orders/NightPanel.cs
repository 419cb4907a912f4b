using Laydown.Demo.Art;
using Laydown.Demo.Files;
using Laydown.Formats.PdfWriting;
using SkiaSharp;

namespace Laydown.Demo.Orders;

/// <summary>The day/night panel: page 1 the estuary by day, page 2 the same place at night with lit birds, with white between as a named separation.</summary>
internal static class NightPanel
{
    private const double Width = 900;
    private const double Height = 600;
    private const double Bleed = 4;
    private const ulong Ground = 7;

    private static readonly Affine[] Avocets = [Affine.Place(572, 420, 84), Affine.Place(452, 396, 56, 0, true)];
    private static readonly Affine[] Terns = [Affine.Place(408, 158, 88, -8), Affine.Place(318, 236, 36, 3), Affine.Place(560, 86, 30, -12)];

    public static void Write(string folder) => PdfFiles.Write(Path.Combine(folder, "night-panel.pdf"), "Day and night panel", true, file =>
    {
        PicturePdf pdf = new(file);
        Page(file, pdf, Draw(Light.Day));
        Page(file, pdf, Draw(Light.Night));
    });

    /// <summary>By day or by night; ground, birds and words stand in the same places.</summary>
    internal static Picture Draw(Light light)
    {
        Picture panel = new(Width, Height, Bleed);
        new Estuary(panel, -Bleed, -Bleed, Width + (2 * Bleed), Height + (2 * Bleed), light, Ground).Draw();
        foreach (Affine place in Terns)
            Birds.Tern(panel, place, light.IsNight);
        foreach (Affine place in Avocets)
            Birds.Avocet(panel, place, light.IsNight);
        panel.Write(light.IsNight ? "The marsh at night" : "The marsh by day", Face.Black, 30, 44, 66, light.IsNight ? Palette.Star : Palette.Deep);
        return panel;
    }

    private static void Page(PdfFile file, PicturePdf pdf, Picture picture) => file.AddPage(PdfPageSize.WithBleed(Width, Height, Bleed), canvas =>
    {
        // White lies under everything, thinner where light must come through; what is drawn over it overprints, so it stays on its plate.
        (byte[] tints, int width, int height) = WhiteBetween();
        PdfImage white = file.AddSpotImage(PdfFiles.White, tints, width, height);
        canvas.On(PdfFiles.WhiteLayer, () => canvas.Apart(() =>
        {
            canvas.Overprint(true);
            canvas.Picture(white, new(0, 0, Width + (2 * Bleed), Height + (2 * Bleed)));
        }));
        canvas.Apart(() =>
        {
            canvas.Overprint(true);
            pdf.Draw(canvas, picture, Bleed, Bleed);
        });
    });

    /// <summary>Full white, two thirds of it behind birds that shall glow.</summary>
    private static (byte[] Tints, int Width, int Height) WhiteBetween()
    {
        Picture windows = new(Width, Height, Bleed);
        windows.Fill(windows.Whole, SKColors.White);
        SKColor thin = new(170, 170, 170);
        foreach (Outline part in Terns.SelectMany(Birds.TernParts).Concat(Avocets.SelectMany(Birds.AvocetParts)))
            windows.Fill(part, thin);
        using SKBitmap pixels = PictureRaster.Draw(windows, 90, null);
        byte[] rgba = pixels.Bytes;
        byte[] tints = new byte[pixels.Width * pixels.Height];
        for (int i = 0; i < tints.Length; i++)
            tints[i] = rgba[4 * i];
        return (tints, pixels.Width, pixels.Height);
    }
}
