using System.Text;
using Laydown.Formats.TiffWriting;
using Xunit;

namespace Laydown.Edges.Tests.PressFiles;

public sealed class XxHash64PublishedTests
{
    /// <summary>Values as printed with the algorithm and its bindings [XXH64], seed 0.</summary>
    [Theory]
    [InlineData("", 0xEF46DB3751D8E999)]
    [InlineData("a", 0xD24EC4F1A98C6E5B)]
    [InlineData("abc", 0x44BC2CF5AD770999)]
    [InlineData("Nobody inspects the spammish repetition", 0xFBCEA83C8A378BF1)]
    public void Equals_the_printed_hash(string text, ulong printed) => Assert.Equal(printed, XxHash64.Of(Encoding.ASCII.GetBytes(text)));
}
