using System.Text;
using Laydown.Colour.Readings;
using Laydown.Formats.Cxf;
using Laydown.Formats.Readings;
using Laydown.Measures;

namespace Laydown.Edges.Tests.Readings;

/// <summary>What is written as CxF3 reads back the same, and bad CxF3 is refused with its place.</summary>
public sealed class CxfLawTests
{
    [Fact]
    public void A_spectral_set_with_further_inks_comes_back_the_same()
    {
        ReadingSet set = ReadingsData.Spectral();
        ReadingSet back = Read(Text(set)).Value;
        Assert.Equal(set.Name, back.Name);
        Assert.Equal(set.InkNames, back.InkNames);
        Assert.Equal(set.Measured, back.Measured);
        Assert.Equal(set.Patches.Select(p => (p.Id, p.Lab)), back.Patches.Select(p => (p.Id, p.Lab)));
        Assert.Equal(set.Patches.SelectMany(p => p.Spectrum!.Values), back.Patches.SelectMany(p => p.Spectrum!.Values));
        Assert.All(set.Patches.Zip(back.Patches), p => Assert.All(p.First.Inks.Zip(p.Second.Inks), i => Assert.Equal(i.First, i.Second, tolerance: 1e-15)));
    }

    [Fact]
    public void A_public_set_comes_back_the_same()
    {
        ReadingSet set = ReadingsData.ReadFile("FOGRA39L.cgats.txt").Value;
        ReadingSet back = Read(Text(set)).Value;
        Assert.Equal(set.Measured, back.Measured);
        Assert.Equal(set.Patches.Select(p => (p.Id, p.Lab)), back.Patches.Select(p => (p.Id, p.Lab)));
    }

    [Fact]
    public void Characters_that_XML_does_not_know_do_no_harm()
    {
        ReadingSet set = ReadingsData.Spectral() with { Name = "a\u0001b\uD800 <&>" };
        Assert.Equal("a b\uFFFD <&>", Read(Text(set)).Value.Name);
    }

    internal static string Text(ReadingSet set)
    {
        using MemoryStream stream = new();
        CxfWriter.Write(set, stream);
        return Encoding.UTF8.GetString(stream.ToArray());
    }

    internal static Reading<ReadingSet> Read(string text) => ReadingsFile.Read("a.cxf", Encoding.UTF8.GetBytes(text));
}
