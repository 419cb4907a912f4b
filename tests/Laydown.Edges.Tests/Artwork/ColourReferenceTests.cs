using System.Globalization;
using NetVips;
using Xunit;

namespace Laydown.Edges.Tests.Artwork;

/// <summary>Colours of images and of PDF pages against Little CMS's own command line.</summary>
public sealed class ColourReferenceTests : IDisposable
{
    private static readonly (int R, int G, int B)[] Twenty =
    [
        (0, 0, 0), (255, 255, 255), (255, 0, 0), (0, 255, 0), (0, 0, 255), (0, 255, 255), (255, 0, 255), (255, 255, 0), (128, 128, 128), (64, 64, 64),
        (200, 120, 40), (30, 80, 160), (12, 200, 99), (240, 230, 210), (90, 20, 60), (17, 34, 51), (180, 200, 220), (250, 128, 114), (70, 130, 180), (107, 142, 35),
    ];

    private readonly WorkFolder work = new();

    [Theory, InlineData("png", false), InlineData("tif", false), InlineData("tif", true)]
    public async Task Twenty_colours_of_an_image_equal_transicc_within_one_code(string extension, bool ownProfile)
    {
        byte[] pixels = [.. Twenty.SelectMany(c => new[] { (byte)c.R, (byte)c.G, (byte)c.B })];
        using var patches = Image.NewFromMemory(pixels, 20, 1, 3, Enums.BandFormat.Uchar).Copy(interpretation: Enums.Interpretation.Srgb);
        string path = work.File("patches." + extension);
        if (ownProfile)
            patches.Mutate(m => m.Set(GValue.BlobType, "icc-profile-data", File.ReadAllBytes(WorkFolder.RgbProfile))).WriteToFile(path);
        else
            patches.WriteToFile(path);

        using var page = (await work.Renderer.RenderAsync(WorkFolder.Request(path, 20, 1, 72), CancellationToken.None)).Value;

        await CompareAsync(ownProfile ? WorkFolder.RgbProfile : "*sRGB", page, 1);
    }

    /// <summary>Ghostscript rounds the colour to 8 bits before the transform and the ink after it: one code at each end.</summary>
    [Fact]
    public async Task Twenty_colours_of_a_pdf_equal_transicc_within_two_codes()
    {
        string content = string.Concat(Twenty.Select((c, i) => Invariant($"{c.R / 255.0:0.######} {c.G / 255.0:0.######} {c.B / 255.0:0.######} rg {i} 0 1 1 re f\n")));
        string path = work.Write("patches.pdf", HandPdf.Page("/MediaBox[0 0 20 1]", "", content));

        using var page = (await work.Renderer.RenderAsync(WorkFolder.Request(path, 20, 1, 72), CancellationToken.None)).Value;

        await CompareAsync("*sRGB", page, 2);
    }

    public void Dispose() => work.Dispose();

    private static async Task CompareAsync(string input, Laydown.Shop.Artwork.RenderedPage page, int tolerance)
    {
        string asked = string.Concat(Twenty.Select(c => Invariant($"{c.R} {c.G} {c.B}\n")));
        string told = await WorkFolder.RunAsync("transicc", asked, "-i" + input, "-o" + WorkFolder.CmykProfile, "-t1", "-b", "-n");
        double[] percents = [.. told.Split([' ', '\n', '\r', '\t'], StringSplitOptions.RemoveEmptyEntries).Select(v => double.Parse(v, CultureInfo.InvariantCulture))];
        Assert.Equal(80, percents.Length);

        string[] inks = ["Cyan", "Magenta", "Yellow", "Black"];
        for (int ink = 0; ink < 4; ink++)
        {
            byte[] plate = WorkFolder.Plate(page, inks[ink]);
            for (int colour = 0; colour < 20; colour++)
                Assert.InRange(plate[colour] - (int)Math.Round(percents[(colour * 4) + ink] * 2.55), -tolerance, tolerance);
        }
    }
}
