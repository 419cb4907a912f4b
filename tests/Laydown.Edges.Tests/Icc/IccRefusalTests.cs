using Laydown.Colour.Spaces;
using Laydown.Formats.Icc;
using Laydown.Measures;

namespace Laydown.Edges.Tests.Icc;

/// <summary>Profiles and pixels that cannot be taken.</summary>
public sealed class IccRefusalTests
{
    [Fact]
    public void An_empty_profile_is_refused() => Assert.Equal("0 bytes", Fault(IccProfile.Read("empty.icc", default)).Found);

    [Fact]
    public void A_profile_cut_short_is_refused_with_both_lengths()
    {
        byte[] whole = IccData.FreeSrgbBytes;
        InputFault fault = Fault(IccProfile.Read("short.icc", whole.AsMemory(0, 2000)));
        Assert.Equal("ICC profile size", fault.Field);
        Assert.Contains("3024", fault.Found, StringComparison.Ordinal);
        Assert.Contains("2000", fault.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_no_profile_is_refused() =>
        Assert.Equal("ICC profile file signature", Fault(IccProfile.Read("picture.png", new byte[4000])).Field);

    [Fact]
    public void A_screen_profile_cannot_stand_for_a_print() =>
        Assert.Contains("Display", Fault(IccProfile.ReadCmykOutput("sRGB2014.icc", IccData.FreeSrgbBytes)).Found, StringComparison.Ordinal);

    [Fact]
    public void A_profile_whose_tables_are_rubbish_gives_a_fault_not_a_crash()
    {
        byte[] spoilt = IccData.FreeSrgbBytes;
        spoilt.AsSpan(128).Fill(0xA5);
        Reading<IccProfile> read = IccProfile.Read("spoilt.icc", spoilt);
        Reading<IccTransform> made = read.Then(p => IccTransform.Between(p, IccProfile.Lab, IccIntent.Perceptual, false));
        Assert.NotEmpty(made.Faults);
    }

    [Fact]
    public void Every_byte_of_the_tag_table_may_be_wrong()
    {
        byte[] whole = IccData.FreeSrgbBytes;
        for (int at = 128; at < 340; at++)
        {
            byte[] spoilt = [.. whole];
            spoilt[at] ^= 0xFF;
            Reading<IccTransform> made = IccProfile.Read("spoilt.icc", spoilt)
                .Then(p => IccTransform.Between(p, IccProfile.Lab, IccIntent.Perceptual, false));
            if (made.IsTaken)
                made.Value.Dispose();
            else
                Assert.All(made.Faults, f => Assert.NotEmpty(f.Found));
        }
    }

    [Fact]
    public void Pixels_that_do_not_fit_are_a_mistake_of_the_caller()
    {
        using IccTransform transform = IccTransform.Between(IccProfile.Srgb, IccProfile.Lab, IccIntent.Perceptual, false).Value;
        Assert.Throws<ArgumentException>(() => transform.Row(new byte[4], new Lab[1]));
        Assert.Throws<ArgumentException>(() => transform.Row(new byte[6], new Lab[1]));
        Assert.Throws<ArgumentException>(() => transform.Row(new byte[3], new byte[3]));
        Assert.Throws<ArgumentException>(() => transform.Row(new Lab[1], new byte[3]));
    }

    [Fact]
    public void A_closed_transform_says_so()
    {
        IccTransform transform = IccTransform.Between(IccProfile.Srgb, IccProfile.Srgb, IccIntent.Perceptual, false).Value;
        transform.Dispose();
        transform.Dispose();
        Assert.Throws<ObjectDisposedException>(() => transform.Row(new byte[3], new byte[3]));
    }

    [Fact]
    public void One_transform_serves_several_threads()
    {
        using IccTransform transform = IccTransform.Between(IccProfile.Srgb, IccData.Boards, IccIntent.Perceptual, true).Value;
        byte[] rgb = IccData.Scattered(3 * 5000), alone = new byte[4 * 5000];
        transform.Row(rgb, alone);
        Parallel.For(0, 8, _ =>
        {
            byte[] together = new byte[4 * 5000];
            transform.Row(rgb, together);
            Assert.Equal(alone, together);
        });
    }

    private static InputFault Fault<T>(Reading<T> reading) => Assert.Single(reading.Faults);
}
