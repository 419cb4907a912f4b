using System.Buffers.Binary;
using Laydown.Colour.Inversion;
using Laydown.Colour.Spaces;
using Laydown.Demo.Profiles;
using Laydown.Formats.Icc;

namespace Laydown.Edges.Tests.Icc;

/// <summary>What the demo's own profiles keep.</summary>
public sealed class DemoProfilesLawTests
{
    private const int Colours = 2000;

    [Fact]
    public void Three_profiles_are_written_whole_and_the_same_each_time()
    {
        string folder = Directory.CreateTempSubdirectory("laydown-test-").FullName;
        try
        {
            DemoProfiles.Write(folder, TestContext.Current.CancellationToken);
            Assert.Equal(["hybrid-boards.icc", "hybrid-rolls.icc", "plain-boards.icc"], Directory.GetFiles(folder).Select(Path.GetFileName).Order());
            Assert.Equal(IccData.BoardsBytes, File.ReadAllBytes(Path.Combine(folder, "hybrid-boards.icc")));
            foreach (string file in Directory.GetFiles(folder))
            {
                IccProfile profile = IccProfile.ReadCmykOutput(Path.GetFileName(file), File.ReadAllBytes(file)).Value;
                Assert.Contains("invented", profile.Description, StringComparison.Ordinal);
                Assert.Equal(2.4, profile.Version);
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public void The_creation_date_is_fixed()
    {
        ReadOnlySpan<byte> date = IccData.BoardsBytes.AsSpan(24, 12);
        Assert.Equal([2026, 1, 1, 0, 0, 0], Words(date));
    }

    [Fact]
    public void Printable_colours_come_back()
    {
        // A good published profile of this table size comes back with 0.16 to 0.20 in the mean, 0.63 to 0.75 for 95 %, about 2 at most.
        InkLimits limits = DemoPrint.All[0].Limits;
        Lab[] wanted = Printable(limits), seen = new Lab[Colours];
        byte[] inks = Inks(wanted);
        using IccTransform back = IccTransform.Between(IccData.Boards, IccProfile.Lab, IccIntent.RelativeColorimetric, false).Value;
        back.Row(inks, seen);
        double[] apart = [.. wanted.Select((w, i) => Ciede2000.Between(w, seen[i])).Order()];
        TestContext.Current.TestOutputHelper!.WriteLine(Invariant($"mean {apart.Average():f3}, 95 % {apart[(int)(0.95 * Colours)]:f3}, most {apart[^1]:f3}"));
        Assert.True(apart.Average() < 0.25);
        Assert.True(apart[(int)(0.95 * Colours)] < 0.75);
        Assert.True(apart[^1] < 2.5);
    }

    [Fact]
    public void The_total_limit_holds_between_the_nodes_too()
    {
        // Bytes round by half a code for each of four inks.
        byte[] scattered = IccData.Scattered(3 * Colours);
        Lab[] any = [.. Enumerable.Range(0, Colours).Select(i =>
            new Lab(scattered[3 * i] / 2.55, scattered[(3 * i) + 1] - 128.0, scattered[(3 * i) + 2] - 128.0))];
        byte[] inks = Inks(any);
        for (int i = 0; i < Colours; i++)
            Assert.True(inks[4 * i] + inks[(4 * i) + 1] + inks[(4 * i) + 2] + inks[(4 * i) + 3] <= (2.60 * 255) + 2);
    }

    [Fact]
    public void White_takes_no_ink_and_black_comes_late_on_the_neutral_axis()
    {
        byte[] inks = Inks([new(100, 0, 0), new(80, 0, 0), new(60, 0, 0), new(40, 0, 0), new(20, 0, 0), new(5, 0, 0)]);
        Assert.Equal([0, 0, 0, 0], inks[..4]);
        Assert.Equal(0, inks[7]);
        Assert.InRange(inks[11], 0, 1);
        Assert.True(inks[15] < inks[19] && inks[19] < inks[23]);
    }

    private static byte[] Inks(Lab[] labs)
    {
        byte[] inks = new byte[4 * labs.Length];
        using IccTransform there = IccTransform.Between(IccProfile.Lab, IccData.Boards, IccIntent.RelativeColorimetric, false).Value;
        there.Row(labs, inks);
        return inks;
    }

    private static Lab[] Printable(InkLimits limits)
    {
        InkInverse inverse = new(DemoPrint.All[0].Model(), limits, BlackPolicy.Usual);
        byte[] scattered = IccData.Scattered(4 * Colours);
        return [.. scattered.Chunk(4).Select(c =>
        {
            double[] inks = [c[0] / 255.0, c[1] / 255.0, c[2] / 255.0, c[3] * c[3] / 65025.0];
            limits.Project(inks);
            return inverse.Predict(inks);
        })];
    }

    private static int[] Words(ReadOnlySpan<byte> bytes)
    {
        int[] words = new int[bytes.Length / 2];
        for (int i = 0; i < words.Length; i++)
            words[i] = BinaryPrimitives.ReadUInt16BigEndian(bytes[(2 * i)..]);
        return words;
    }
}
