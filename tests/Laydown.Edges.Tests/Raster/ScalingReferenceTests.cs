using Laydown.Raster.Scaling;
using Laydown.Raster.Tiles;
using NetVips;

namespace Laydown.Edges.Tests.Raster;

/// <summary>Enlarging and reducing beside libvips [NetVips], which puts pixels' middles where we do and weighs with the same kernels.</summary>
public sealed class ScalingReferenceTests
{
    private const int Side = 120, Margin = 16;

    /// <summary>
    /// libvips reduces in whole numbers of 1/4096, and enlarges with a table of 64 places within a pixel: on a slope of at most 1540 codes a pixel a place off by 1/64 pixel
    /// makes 24 codes of 65535. Its <c>resize</c> lays enlarged pixels half a new pixel too far left (a mirrored picture does not come out mirrored, found here on a
    /// straight rise: 39.5 where the middle lies at 39.7), so it is told the place by <c>affine</c>.
    /// </summary>
    [Theory]
    [InlineData(432, ScaleKernel.CatmullRom, Enums.Kernel.Cubic)]
    [InlineData(300, ScaleKernel.CatmullRom, Enums.Kernel.Cubic)]
    [InlineData(60, ScaleKernel.Lanczos3, Enums.Kernel.Lanczos3)]
    [InlineData(80, ScaleKernel.CatmullRom, Enums.Kernel.Cubic)]
    [InlineData(40, ScaleKernel.Linear, Enums.Kernel.Linear)]
    public void A_smooth_picture_comes_out_as_libvips_makes_it(int to, ScaleKernel kernel, Enums.Kernel theirs)
    {
        ushort[] values = [.. Enumerable.Range(0, Side * Side).Select(i => (ushort)Math.Round(
            32768 + (14000 * Math.Sin((i % Side) * 0.06)) + (14000 * Math.Cos((i / Side) * 0.05))))];
        using Image image = Image.NewFromMemory(values, Side, Side, 1, Enums.BandFormat.Ushort);
        using Image resized = to > Side ? Enlarged(image, to) : image.Resize((double)to / Side, kernel: theirs);
        ushort[] wanted = resized.WriteToMemory<ushort>();
        Assert.Equal((to, to), (resized.Width, resized.Height));
        ushort[] made = Made(values, to, kernel);
        int edge = Math.Max(4, Margin * to / Side), worst = 0;
        for (int y = edge; y < to - edge; y++)
        {
            for (int x = edge; x < to - edge; x++)
                worst = Math.Max(worst, Math.Abs(made[(y * to) + x] - wanted[(y * to) + x]));
        }

        Assert.InRange(worst, 0, 64);
    }

    private static Image Enlarged(Image image, int to)
    {
        double ratio = (double)to / Side, middle = (ratio - 1) / 2;
        using Interpolate cubic = Interpolate.NewFromName("bicubic");
        return image.Affine([ratio, 0, 0, ratio], interpolate: cubic, oarea: [0, 0, to, to], odx: middle, ody: middle, extend: Enums.Extend.Copy);
    }

    private static ushort[] Made(ushort[] values, int to, ScaleKernel kernel)
    {
        AxisScale axis = new(Side, to, kernel);
        (int first, int count) = axis.SourceRange(0, to);
        Tile source = new(1, count, count), target = new(1, to, to);
        source.PlaceAt(first, first);
        for (int y = 0; y < count; y++)
        {
            for (int x = 0; x < count; x++)
                source.Row(0, y)[x] = values[(Math.Clamp(first + y, 0, Side - 1) * Side) + Math.Clamp(first + x, 0, Side - 1)];
        }

        new Scaler(axis, axis).Run(source, target);
        return [.. Enumerable.Range(0, to).SelectMany(y => target.Row(0, y).ToArray())];
    }
}
