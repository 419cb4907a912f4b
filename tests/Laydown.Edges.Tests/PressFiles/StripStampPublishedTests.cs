using System.Text;
using Laydown.Formats.TiffWriting;
using Xunit;

namespace Laydown.Edges.Tests.PressFiles;

public sealed class StripStampPublishedTests
{
    /// <summary>Values as printed with the algorithm and its bindings [XXH64], seed 0: journals written before must stay readable.</summary>
    [Theory]
    [InlineData("a", 0xD24EC4F1A98C6E5B)]
    [InlineData("abc", 0x44BC2CF5AD770999)]
    [InlineData("Nobody inspects the spammish repetition", 0xFBCEA83C8A378BF1)]
    public void A_strip_is_stamped_with_the_printed_hash_of_its_bytes(string text, ulong printed)
    {
        using Bench bench = new();
        byte[] row = Encoding.ASCII.GetBytes(text);
        DotHeader header = DotPictures.Header(8 * row.Length, 1, 1, DotPacking.None);
        using DotTiffWriter writer = DotTiffWriter.Create(Path.Combine(bench.Pages, "dots.tif"), header);
        Assert.Equal(new StripStamp(row.Length, printed), writer.Write(0, row));
    }
}
