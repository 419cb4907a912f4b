using System.Text;
using Laydown.Colour.Readings;
using Laydown.Edges.Tests.Icc;
using Laydown.Formats.Cgats;
using Laydown.Formats.Readings;
using Laydown.Measures;

namespace Laydown.Edges.Tests.Readings;

/// <summary>Files of readings for the tests.</summary>
internal static class ReadingsData
{
    public const string Inks = "SAMPLE_ID CMYK_C CMYK_M CMYK_Y CMYK_K LAB_L LAB_A LAB_B";

    public static byte[] Bytes(string name) => File.ReadAllBytes(IccData.PathOf(name));

    public static Reading<ReadingSet> ReadFile(string name) => ReadingsFile.Read(name, Bytes(name));

    public static Reading<ReadingSet> ReadText(string text) => ReadingsFile.Read("readings.txt", Encoding.Latin1.GetBytes(text));

    /// <summary>A whole CGATS text around fields and rows.</summary>
    public static string Cgats(string fields, params string[] rows) =>
        $"CGATS.17\nNUMBER_OF_SETS {rows.Length}\nBEGIN_DATA_FORMAT\n{fields}\nEND_DATA_FORMAT\nBEGIN_DATA\n{string.Join('\n', rows)}\nEND_DATA\n";

    public static byte[] Written(ReadingSet set)
    {
        using MemoryStream stream = new();
        CgatsWriter.Write(set, stream);
        return stream.ToArray();
    }

    /// <summary>A spectral set of three inks, one of them a spot ink with a name in two words; two readings of one patch.</summary>
    public static ReadingSet Spectral()
    {
        Patch Make(string id, double[] inks, double level)
        {
            Spectrum spectrum = new(380, 10, [.. Enumerable.Range(0, 36).Select(b => level * (0.5 + (0.4 * Math.Sin(b / 7.0))))]);
            return new(id, inks, ReadingColour.LabOf(spectrum), spectrum);
        }

        return new(
            "Board, white \u00B5", ["Cyan", "Light Cyan", "Harbour red"], new("Hand-held", "M1", "White", "2026-11-25", "45:0"),
            [Make("A 1", [0, 0, 0], 1), Make("A2", [1, 0.25, 0], 0.3), Make("A2", [1, 0.25, 0], 0.31), Make("A3", [1 / 3.0, 0, 0.7], 0.012)]);
    }
}
