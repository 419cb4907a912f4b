using Laydown.Colour.Readings;
using Laydown.Colour.Spaces;

namespace Laydown.Edges.Tests.Readings;

/// <summary>Public data sets, as others wrote them, read whole (tests/data/colour/README.md).</summary>
public sealed class PublicReadingsReferenceTests
{
    [Theory]
    [InlineData("FOGRA39L.cgats.txt", 1617, "FOGRA39L")]
    [InlineData("FOGRA28L.cgats.txt", 1485, "FOGRA28")]
    [InlineData("TR002.cgats.txt", 928, "Color Characterization Data for Coldset Printing on Newsprint")]
    [InlineData("TR003.cgats.txt", 1617, "Color Characterization Data for SWOP proofing on Grade 3 coated paper")]
    [InlineData("CGATS21-2-CRPC5.csv", 1617, "CGATS21-2-CRPC5.csv")]
    [InlineData("CGATS21-2-CRPC7.csv", 1617, "CGATS21-2-CRPC7.csv")]
    public void A_public_set_is_read_whole(string file, int patches, string name)
    {
        ReadingSet set = ReadingsData.ReadFile(file).Value;
        Assert.Equal(patches, set.Patches.Count);
        Assert.Equal(name, set.Name);
        Assert.Equal(["Cyan", "Magenta", "Yellow", "Black"], set.InkNames);
        Assert.Equal(patches, set.Patches.Select(p => p.Id).Distinct().Count());
        Assert.Contains("inks given in percent", set.Notes);
        for (int ink = 0; ink < 4; ink++)
            Assert.Equal(1, set.Patches.Max(p => p.Inks[ink]));
    }

    [Fact]
    public void Rows_of_FOGRA39L_are_as_printed_in_the_file()
    {
        // First data row and the row of the file for patch 1617.
        ReadingSet set = ReadingsData.ReadFile("FOGRA39L.cgats.txt").Value;
        Assert.Equal(new Lab(95, 0, -2), set.Patches[0].Lab);
        Assert.Equal(new Lab(90.67, 5.90, -3.86), set.Patches[1].Lab);
        Assert.Equal([0, 0.1, 0, 0], set.Patches[1].Inks.Select(i => Math.Round(i, 12)));
        Assert.Equal("1617", set.Patches[^1].Id);
    }

    [Fact]
    public void Lab_made_from_the_XYZ_columns_agrees_with_the_Lab_columns_to_their_rounding()
    {
        // XYZ is rounded to 0.01. Light colours (L* over 50) move by less than 0.1 ΔE00 for that; darks by up to 0.4.
        string text = File.ReadAllText(Icc.IccData.PathOf("FOGRA39L.cgats.txt")).Replace("LAB_L LAB_A LAB_B", "SKIP_1 SKIP_2 SKIP_3", StringComparison.Ordinal);
        ReadingSet fromXyz = ReadingsData.ReadText(text).Value;
        ReadingSet fromLab = ReadingsData.ReadFile("FOGRA39L.cgats.txt").Value;
        Assert.Equal(fromLab.Patches.Count, fromXyz.Patches.Count);
        Assert.All(fromLab.Patches.Zip(fromXyz.Patches), pair =>
            Assert.InRange(Ciede2000.Between(pair.First.Lab, pair.Second.Lab), 0, pair.First.Lab.L > 50 ? 0.1 : 0.45));
    }
}
