using System.Buffers.Binary;
using System.Security.Cryptography;
using Laydown.Colour.Inversion;
using Laydown.Colour.Spaces;
using Laydown.Formats.Icc;

namespace Laydown.Edges.Tests.Icc;

/// <summary>What profiles and links of any number of inks keep.</summary>
public sealed class InkProfilesLawTests
{
    public static TheoryData<int, IccEdition> All => new MatrixTheoryData<int, IccEdition>([3, 4, 5, 6, 7, 8], [IccEdition.V2, IccEdition.V4]);

    [Theory, MemberData(nameof(All))]
    public void A_profile_opens_and_is_the_same_each_time(int inks, IccEdition edition)
    {
        byte[] bytes = InkTables.Profile(inks, edition);
        Assert.Equal(bytes, InkTables.Profile(inks, edition));
        IccProfile profile = IccProfile.Read("inks.icc", bytes).Value;
        Assert.Equal(IccClass.Output, profile.Class);
        Assert.Equal(inks == 4 ? IccSpace.Cmyk : IccSpace.Ink3 + inks - 3, profile.Space);
        Assert.Equal(IccSpace.Lab, profile.Target);
        Assert.Equal(edition == IccEdition.V4 ? 4.3 : 2.4, profile.Version);
    }

    [Theory, MemberData(nameof(All))]
    public void Every_node_of_the_table_comes_back_by_Little_Cms(int inks, IccEdition edition)
    {
        ProfileTables tables = InkTables.Make(inks);
        IccProfile profile = IccProfile.Read("inks.icc", InkTables.Profile(inks, edition)).Value;
        using IccTransform there = IccTransform.Precise(profile, IccProfile.Lab, IccIntent.RelativeColorimetric, false).Value;
        double[] nodes = new double[inks * tables.Forward.Count], seen = new double[3 * tables.Forward.Count];
        for (int n = 0; n < tables.Forward.Count; n++)
        {
            for (int i = inks - 1, rest = n; i >= 0; i--, rest /= tables.ForwardSteps)
                nodes[(inks * n) + i] = rest % tables.ForwardSteps / (tables.ForwardSteps - 1.0);
        }

        there.Row(nodes, seen);
        for (int n = 0; n < tables.Forward.Count; n++)
        {
            // Half a step of 16 bits is 0.001 in L*, 0.002 in a* and b*; the library's own numbers take as much again.
            Assert.Equal(tables.Forward[n].L, seen[3 * n], 0.004);
            Assert.Equal(tables.Forward[n].A, seen[(3 * n) + 1], 0.008);
            Assert.Equal(tables.Forward[n].B, seen[(3 * n) + 2], 0.008);
        }
    }

    [Theory, MemberData(nameof(All))]
    public void Limits_hold_at_nodes_and_after_rounding_to_8_bits(int inks, IccEdition edition)
    {
        ProfileTables tables = InkTables.Make(inks);
        InkLimits limits = InkTables.LimitsOf(inks);
        IccProfile profile = IccProfile.Read("inks.icc", InkTables.Profile(inks, edition)).Value;
        Lab[] nodes = [.. Enumerable.Range(0, 4913).Select(n => tables.Axes.Node(n / 289, n / 17 % 17, n % 17))];
        byte[] scattered = IccData.Scattered(3 * 3000);
        Lab[] any = [.. nodes, .. scattered.Chunk(3).Select(c => new Lab(c[0] / 2.55, c[1] - 128.0, c[2] - 128.0))];

        using IccTransform fine = IccTransform.Precise(IccProfile.Lab, profile, IccIntent.RelativeColorimetric, false).Value;
        double[] exact = new double[inks * nodes.Length];
        fine.Row([.. nodes.SelectMany(n => new[] { n.L, n.A, n.B })], exact);
        using IccTransform coarse = IccTransform.Between(IccProfile.Lab, profile, IccIntent.RelativeColorimetric, false).Value;
        byte[] rounded = new byte[inks * any.Length];
        coarse.Row(any, rounded);

        // A node is met to within the library's single precision and the curve's 16 bits: 1e-4 of an ink.
        for (int n = 0; n < nodes.Length; n++)
            Assert.True(exact.AsSpan(inks * n, inks).ToArray().Sum() <= limits.Total + (1e-4 * inks));
        for (int i = 0; i < exact.Length; i++)
        {
            Assert.True(exact[i] <= limits.PerInk[i % inks] + 1e-6);
            Assert.Equal(tables.Colorimetric[i], exact[i], 1.0 / 255);
        }

        for (int i = 0; i < rounded.Length; i++)
            Assert.True(rounded[i] <= 255 * limits.PerInk[i % inks], Invariant($"ink {i % inks}: {rounded[i]}"));
    }

    [Theory]
    [InlineData(3, 4)]
    [InlineData(3, 7)]
    [InlineData(4, 4)]
    [InlineData(4, 6)]
    [InlineData(4, 8)]
    public void A_link_runs_in_Little_Cms(int channels, int inks)
    {
        LinkTables link = InkTables.Link(channels, inks);
        byte[] bytes = DeviceLinkProfile.Write(link, "Link, invented", "No copyright", "Picture", "Print");
        Assert.Equal(bytes, DeviceLinkProfile.Write(link, "Link, invented", "No copyright", "Picture", "Print"));
        using IccTransform transform = IccTransform.Through(IccProfile.Read("link.icc", bytes).Value, precise: true).Value;
        double[] corners = [.. Enumerable.Range(0, 1 << channels).SelectMany(n => Enumerable.Range(0, channels).Select(c => (double)((n >> c) & 1)))];
        double[] seen = new double[inks << channels];
        transform.Row(corners, seen);
        for (int n = 0; n < 1 << channels; n++)
        {
            int node = 0;
            for (int c = 0; c < channels; c++)
                node = (node * link.Steps) + ((n >> c) & 1) * (link.Steps - 1);
            for (int i = 0; i < inks; i++)
                Assert.Equal(link.Table[(node * inks) + i], seen[(n * inks) + i], 2.0 / 65535);
        }
    }

    [Fact]
    public void The_profile_ID_is_the_sum_of_the_profile()
    {
        byte[] bytes = InkTables.Profile(6, IccEdition.V4), copy = [.. bytes];
        copy.AsSpan(44, 4).Clear();
        copy.AsSpan(64, 4).Clear();
        copy.AsSpan(84, 16).Clear();
#pragma warning disable CA5351 // The format names this sum.
        Assert.Equal(MD5.HashData(copy), bytes[84..100]);
#pragma warning restore CA5351
    }

    [Fact]
    public void Ink_names_stand_in_the_colorant_table()
    {
        byte[] bytes = InkTables.Profile(6, IccEdition.V4);
        int at = bytes.AsSpan(128 + 4).IndexOf("clrt"u8) + 132;
        int offset = BinaryPrimitives.ReadInt32BigEndian(bytes.AsSpan(at + 4));
        Assert.Equal(6, BinaryPrimitives.ReadInt32BigEndian(bytes.AsSpan(offset + 8)));
        Assert.Equal("Orange", System.Text.Encoding.ASCII.GetString(bytes, offset + 12 + (4 * 38), 6));
    }

    [Fact]
    public void A_profile_of_six_inks_needs_their_names() =>
        Assert.Throws<ArgumentException>(() => OutputProfile.Write(InkTables.Make(6), "Six", "No copyright"));
}
