using System.Globalization;
using Laydown.Demo.Profiles;
using Laydown.Edges.Tests.Orders;
using Laydown.Formats.Icc;

namespace Laydown.Edges.Tests.Icc;

/// <summary>Profiles and colours for the tests; the demo's profiles are made once for all of them.</summary>
internal static class IccData
{
    private static readonly Lazy<byte[]> Made = new(() => DemoProfiles.Make(DemoPrint.All[0], CancellationToken.None));

    /// <summary>The demo's profile for boards on the hybrid press.</summary>
    public static byte[] BoardsBytes => [.. Made.Value];

    public static IccProfile Boards => IccProfile.ReadCmykOutput("hybrid-boards.icc", Made.Value).Value;

    public static byte[] FreeSrgbBytes => File.ReadAllBytes(PathOf("sRGB2014.icc"));

    public static string PathOf(string name) => Path.Combine(Checkout.Root, "tests", "data", "colour", name);

    /// <summary>Scattered bytes, the same each time.</summary>
    public static byte[] Scattered(int count)
    {
        byte[] bytes = new byte[count];
        new Random(20260101).NextBytes(bytes);
        return bytes;
    }

    /// <summary>Rows of "in, in, …, -->, out, out, …".</summary>
    public static IEnumerable<(double[] In, double[] Out)> Vectors(string name) => File.ReadLines(PathOf(name)).Where(l => l.Length > 0).Select(l =>
    {
        string[] sides = l.Split("-->");
        return (Numbers(sides[0], ','), Numbers(sides[1], ','));
    });

    public static double[] Numbers(string text, char separator) =>
        [.. text.Split(separator, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(v => double.Parse(v, CultureInfo.InvariantCulture))];
}
