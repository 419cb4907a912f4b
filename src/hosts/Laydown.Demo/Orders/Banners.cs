using Laydown.Demo.Art;
using Laydown.Demo.Files;
using SkiaSharp;

namespace Laydown.Demo.Orders;

/// <summary>A mesh banner as CMYK TIFF whose darks carry too much ink, and a banner as JPEG that claims a wrong resolution.</summary>
internal static class Banners
{
    public static void Write(string folder)
    {
        ImageFiles.CmykTiff(Path.Combine(folder, "tern-night-banner.tif"), Night(), 32);
        (byte[] jpeg, _, _) = ImageFiles.Jpeg(OpenDay(), 50, 300, 90);
        DemoFiles.Write(Path.Combine(folder, "open-day.jpg"), stream => stream.Write(jpeg));
    }

    /// <summary>3600 × 1500 mm, without the allowance that a hem needs.</summary>
    private static Picture Night()
    {
        Picture banner = new(3600, 1500, 0);
        new Estuary(banner, 0, 0, 3600, 1500, Light.Night, 23).Draw();
        Birds.Tern(banner, Affine.Place(2560, 560, 330, -10), lit: true);
        Birds.Tern(banner, Affine.Place(3130, 330, 130, -4, true), lit: true);
        Birds.Tern(banner, Affine.Place(2010, 300, 92, 6), lit: true);
        banner.Write("Night of the terns", Face.Black, 250, 170, 985, Palette.Star, -2);
        banner.Write("12 December, after dusk, at the dome", Face.Bold, 96, 180, 1140, Palette.Lamp);
        banner.Write("Warm clothes, no torches: the birds bring the light.", Face.Regular, 68, 180, 1250, Palette.Water);
        Mark.WithName(banner, 180, 130, 220, Palette.Star);
        return banner;
    }

    private static Picture OpenDay()
    {
        Picture banner = new(2000, 800, 0);
        new Estuary(banner, 760, 0, 1240, 800, Light.Day, 40).Draw();
        Birds.Avocet(banner, Affine.Place(1400, 500, 150));
        Birds.Tern(banner, Affine.Place(1180, 190, 130, -10));
        banner.Fill(new Outline().M(0, 0).L(850, 0).C(770, 260, 900, 500, 800, 800).L(0, 800).Z(), Palette.Samphire);
        banner.Fill(new Outline().M(850, 0).C(770, 260, 900, 500, 800, 800).L(816, 800).C(916, 500, 786, 260, 866, 0).Z(), Palette.Dune);
        banner.Write("Open day", Face.Black, 168, 84, 330, Palette.Cream, -1);
        banner.Write("Low tide walk, dome tour,", Face.Bold, 52, 90, 440, Palette.Cream);
        banner.Write("soup for everyone", Face.Bold, 52, 90, 506, Palette.Cream);
        banner.Write("Sunday 6 December, from ten", Face.Regular, 40, 90, 596, new SKColor(0xF7, 0xD9, 0xBE));
        Mark.WithName(banner, 88, 668, 84, Palette.Cream);
        return banner;
    }
}
