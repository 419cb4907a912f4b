using Laydown.Intake.Artwork;
using Xunit;

namespace Laydown.Edges.Tests.Artwork;

/// <summary>The wide loops over bytes of plates give what the plain ones give.</summary>
public sealed class PlateBytesLawTests
{
    [Theory, InlineData(0), InlineData(1), InlineData(15), InlineData(16), InlineData(33), InlineData(1000)]
    public void Wide_equals_plain_and_there_and_back_is_the_same(int length)
    {
        byte[] bytes = new byte[length];
        new Random(5).NextBytes(bytes);
        ushort[] wide = new ushort[length], plain = new ushort[length];
        PlateBytes.WidenInverted(bytes, wide);
        PlateBytes.WidenInvertedPlain(bytes, plain);
        Assert.Equal(plain, wide);

        byte[] back = new byte[length], backPlain = new byte[length];
        PlateBytes.Narrow(wide, back);
        PlateBytes.NarrowPlain(wide, backPlain);
        Assert.Equal(backPlain, back);
        Assert.Equal(bytes.Select(b => (byte)~b), back);
    }
}
