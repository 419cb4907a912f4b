using Laydown.Colour.Inversion;
using Laydown.Formats.Icc;
using Laydown.Measures;

namespace Laydown.Edges.Tests.Icc;

/// <summary>Profiles and links that our own reader cannot take: a fault, never a crash.</summary>
public sealed class IccEvaluatorRefusalTests
{
    [Fact]
    public void Spoilt_profiles_give_a_fault_or_a_finite_colour()
    {
        Random random = new(20260102);
        byte[][] wholes =
        [
            InkTables.Profile(4, IccEdition.V2), InkTables.Profile(6, IccEdition.V4), IccData.FreeSrgbBytes,
            File.ReadAllBytes(IccData.PathOf("sRGB_v4_ICC_preference.icc")), File.ReadAllBytes(IccData.PathOf("Gray.icc")),
        ];
        int refused = 0;
        for (int trial = 0; trial < 3000; trial++)
        {
            byte[] spoilt = Spoilt(wholes[trial % wholes.Length], random);
            Reading<IccEvaluator> read = IccEvaluator.Read("spoilt.icc", spoilt);
            if (!read.IsTaken)
            {
                refused++;
                Assert.All(read.Faults, f => Assert.NotEmpty(f.Found));
                continue;
            }

            double[] middle = [.. Enumerable.Repeat(0.4, read.Value.Channels)];
            try
            {
                Assert.All(read.Value.ToPcs(middle, IccIntent.RelativeColorimetric), v => Assert.False(double.IsNaN(v)));
            }
            catch (ArgumentException none)
            {
                Assert.Contains("no way in this direction", none.Message, StringComparison.Ordinal);
            }
        }

        Assert.InRange(refused, 300, 2999);
    }

    [Fact]
    public void Spoilt_links_give_a_fault_or_whole_tables()
    {
        Random random = new(20260103);
        byte[] whole = Link(3, 6);
        int refused = 0;
        for (int trial = 0; trial < 2000; trial++)
        {
            Reading<LinkTables> read = DeviceLinkProfile.Read("spoilt.icc", Spoilt(whole, random));
            if (read.IsTaken)
                Assert.Equal((int)Math.Pow(read.Value.Steps, read.Value.Channels) * read.Value.InkNames.Count, read.Value.Table.Count);
            else
                refused++;
        }

        Assert.InRange(refused, 100, 1999);
    }

    [Theory]
    [InlineData(3, 4)]
    [InlineData(4, 7)]
    public void A_link_comes_back_from_its_bytes(int channels, int inks)
    {
        LinkTables wanted = InkTables.Link(channels, inks), seen = DeviceLinkProfile.Read("link.icc", Link(channels, inks)).Value;
        Assert.Equal(wanted.InkNames, seen.InkNames);
        Assert.Equal(wanted.Steps, seen.Steps);
        for (int i = 0; i < wanted.Table.Count; i++)
            Assert.InRange(seen.Table[i], wanted.Table[i] - (1.01 / 65535), wanted.Table[i] + 1e-7);
        Assert.All(wanted.PreCurves[0].Zip(seen.PreCurves[0]), p => Assert.Equal(p.First, p.Second, 1.0 / 65535));
    }

    [Fact]
    public void An_absurd_table_is_refused_with_its_tag()
    {
        byte[] bytes = InkTables.Profile(6, IccEdition.V4);
        int at = bytes.AsSpan().IndexOf("mAB "u8);
        int grid = at + System.Buffers.Binary.BinaryPrimitives.ReadInt32BigEndian(bytes.AsSpan(at + 24));
        bytes.AsSpan(grid, 15).Fill(255);
        InputFault fault = Assert.Single(IccEvaluator.Read("absurd.icc", bytes).Faults);
        Assert.Equal("ICC A2B0", fault.Field);
        Assert.Contains("255×255", fault.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void Wrong_class_and_a_file_cut_short_are_refused()
    {
        Assert.Contains("link", Assert.Single(IccEvaluator.Read("link.icc", Link(3, 4)).Faults).Found, StringComparison.Ordinal);
        Assert.Contains("2000", Assert.Single(IccEvaluator.Read("s.icc", IccData.FreeSrgbBytes.AsMemory(0, 2000)).Faults).Found, StringComparison.Ordinal);
        Assert.Contains("mntr", Assert.Single(DeviceLinkProfile.Read("s.icc", IccData.FreeSrgbBytes).Faults).Found, StringComparison.Ordinal);
    }

    private static byte[] Link(int channels, int inks) =>
        DeviceLinkProfile.Write(InkTables.Link(channels, inks), "Link, invented", "No copyright", "Picture", "Print");

    // Up to eight bytes of the first kilobyte, where the structure lies, or a cut.
    private static byte[] Spoilt(byte[] whole, Random random)
    {
        byte[] spoilt = [.. whole];
        if (random.Next(20) == 0)
            return spoilt[..random.Next(spoilt.Length)];
        for (int i = random.Next(1, 9); i > 0; i--)
            spoilt[random.Next(Math.Min(spoilt.Length, random.Next(2) == 0 ? 400 : 1200))] = (byte)random.Next(256);
        return spoilt;
    }
}
