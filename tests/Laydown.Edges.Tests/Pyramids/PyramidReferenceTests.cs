using Laydown.Shop.Run;
using NetVips;

namespace Laydown.Edges.Tests.Pyramids;

/// <summary>Levels of contone press files against libvips, which reads the TIFF by itself, cuts a part out and shrinks it.</summary>
public sealed class PyramidReferenceTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(3)]
    public async Task A_part_of_a_level_is_what_libvips_cuts_and_shrinks(int level)
    {
        using PyramidPictures pictures = new();
        PressFileAt file = pictures.Contone(1200, 904, 3);
        PressPart part = new(level, 24 >> level, 408 >> level, 800 >> level, 400 >> level);
        byte[] found = (await pictures.Planes.ReadAsync(file, part, CancellationToken.None)).Value;
        using Image whole = Image.Tiffload(file.Path);
        using Image cut = whole.ExtractArea(part.Left << level, part.Top << level, part.Columns << level, part.Rows << level);
        using Image shrunk = cut.Shrink(1 << level, 1 << level);
        byte[] wanted = shrunk.WriteToMemory<byte>();
        int worst = 0;
        for (int at = 0; at < wanted.Length; at++)
            worst = Math.Max(worst, Math.Abs(wanted[at] - found[(at % 3 * part.Rows * part.Columns) + (at / 3)]));

        // libvips shrinks in one direction after the other and rounds between, so a code may differ by one.
        Assert.InRange(worst, 0, level == 0 ? 0 : 1);
    }
}
