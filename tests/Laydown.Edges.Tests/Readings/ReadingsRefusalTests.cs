using Laydown.Formats.Readings;
using Laydown.Measures;

namespace Laydown.Edges.Tests.Readings;

/// <summary>Readings that cannot be taken are refused with what and where.</summary>
public sealed class ReadingsRefusalTests
{
    private const string White = "1 0 0 0 0 95 0 -2", Solid = "2 100 0 0 0 55 -37 -50";

    public static IEnumerable<TheoryDataRow<string, string, string>> Bad() =>
    [
        new("NUMBER_OF_SETS", "3 promised, 2 rows", Table(White, Solid).Replace("SETS 2", "SETS 3", StringComparison.Ordinal)),
        new("BEGIN_DATA in line 6", "no END_DATA", Table(White, Solid).Replace("END_DATA\n", "", StringComparison.Ordinal).Replace("LAB_B\n", "LAB_B\nEND_DATA_FORMAT\n", StringComparison.Ordinal).Replace("END_DATA_FORMAT\nEND_DATA_FORMAT", "END_DATA_FORMAT", StringComparison.Ordinal)),
        new("line 8", "7 values", Table(White, "2 100 0 0 0 55 -37")),
        new("line 8, LAB_A", "NaN", Table(White, "2 100 0 0 0 55 NaN -50")),
        new("line 8, CMYK_C", "full", Table(White, "2 full 0 0 0 55 -37 -50")),
        new("line 8, LAB_B", "nothing", Table(White, "2\t100\t0\t0\t0\t55\t-37\t\"\"")),
        new("line 8, ink", "-5", Table(White, "2 -5 0 100 0 55 -37 -50")),
        new("line 8, SAMPLE_ID", "patch 1 with other inks than in line 7", Table(White, "1 100 0 0 0 55 -37 -50")),
        new("Cyan", "values up to 255", Table(White, "2 255 0 0 0 55 -37 -50")),
        new("Cyan", "no value over 1.5", Table(White, "2 1.5 0 0 0 55 -37 -50")),
        new("Cyan", "no value over 0.1", Table(White, "2 0.1 0 0 0 55 -37 -50")),
        new("Magenta", "values up to 1 beside Cyan", Table(White, "2 100 1 0 0 55 -37 -50")),
        new("line 8, LAB_L", "Lab 5500", Table(White, "2 100 0 0 0 5500 -37 -50")),
        new("fields", "R G B", "R,G,B,L,a,b\n1,1,1,95,0,0\n"),
        new("fields", "SAMPLE_ID LAB_L", ReadingsData.Cgats("SAMPLE_ID LAB_L LAB_A LAB_B", "1 95 0 0")),
        new("fields", "SAMPLE_ID CMYK_C", ReadingsData.Cgats("SAMPLE_ID CMYK_C", "1 95")),
        new("fields", "Cyan 2 times", ReadingsData.Cgats("CMYK_C C LAB_L LAB_A LAB_B", "1 1 95 0 0")),
        new("data", "no row", ReadingsData.Cgats(ReadingsData.Inks)),
        new("ILLUMINANT", "D65", "CGATS.17\nILLUMINANT \"D65\"\n" + Table(White, Solid)),
        new("OBSERVER", "10 degree", "CGATS.17\nOBSERVER \"10 degree\"\n" + Table(White, Solid)),
        new("line 7, nm500", "reflectance -0.01", Spectral(400, 10, 31, (10, "-0.01"))),
        new("line 7, nm500", "NaN", Spectral(400, 10, 31, (10, "NaN"))),
        new("spectrum", "reflectance up to 5", Spectral(400, 10, 31, (10, "5"))),
        new("spectrum", "420 nm to 720 nm", Spectral(420, 10, 31, (10, "0.5"))),
        new("spectrum", "425 nm after 410 nm", Spectral(400, 10, 31, (10, "0.5")).Replace("nm410 nm420", "nm410 nm425", StringComparison.Ordinal)),
        new("lines", "1 lines", "C,M,Y,K,L,a,b\n"),
        new("line 3", "6 values", "C,M,Y,K,L,a,b\n0,0,0,0,95,0,0\n100,0,0,0,55,-37\n"),
    ];

    [Theory, MemberData(nameof(Bad))]
    public void Bad_readings_are_refused_with_place_and_value(string field, string found, string text)
    {
        Reading<Colour.Readings.ReadingSet> reading = ReadingsData.ReadText(text);
        Assert.False(reading.IsTaken);
        InputFault fault = reading.Faults[0];
        Assert.Equal("readings.txt", fault.File);
        Assert.Equal(field, fault.Field);
        Assert.Contains(found, fault.Found, StringComparison.Ordinal);
        Assert.NotEmpty(fault.Wanted);
    }

    [Fact]
    public void An_empty_file_and_bytes_that_are_no_text_are_refused()
    {
        Assert.Equal("0 bytes", ReadingsFile.Read("a", ReadOnlyMemory<byte>.Empty).Faults[0].Found);
        Assert.Equal("bytes that are no text", ReadingsFile.Read("a", new byte[] { 1, 0, 2 }).Faults[0].Found);
        Assert.Contains("at most", ReadingsFile.Read("a", new byte[(64 << 20) + 1]).Faults[0].Wanted, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_cut_of_a_file_is_refused_and_none_throws()
    {
        string whole = Table(White, Solid).TrimEnd();
        Assert.True(ReadingsData.ReadText(whole).IsTaken);
        for (int length = 0; length < whole.Length; length++)
            Assert.False(ReadingsData.ReadText(whole[..length]).IsTaken);
    }

    [Fact]
    public void Many_faults_are_counted_not_listed()
    {
        Reading<Colour.Readings.ReadingSet> reading = ReadingsData.ReadText(Table([White, .. Enumerable.Range(2, 40).Select(i => Invariant($"{i} 100 0 0 0 NaN 0 0"))]));
        Assert.Equal(21, reading.Faults.Count);
        Assert.Equal("20 more faults like these", reading.Faults[^1].Found);
    }

    private static string Table(params string[] rows) => ReadingsData.Cgats(ReadingsData.Inks, rows);

    private static string Spectral(int first, int step, int bands, (int Band, string Value) bad) => ReadingsData.Cgats(
        "CMYK_K " + string.Join(' ', Enumerable.Range(0, bands).Select(b => Invariant($"nm{first + (step * b)}"))),
        "0 " + string.Join(' ', Enumerable.Range(0, bands).Select(b => b == bad.Band ? bad.Value : "0.8")),
        "100 " + string.Join(' ', Enumerable.Repeat("0.02", bands)));
}
