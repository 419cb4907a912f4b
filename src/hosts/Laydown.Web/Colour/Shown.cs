using Laydown.Colour.Spaces;

namespace Laydown.Web.Colour;

/// <summary>How colours and inks are written on pages.</summary>
public static class Shown
{
    /// <summary>A colour for the screen, such as <c>#1f6f83</c>; what the screen cannot show is clipped.</summary>
    public static string Hex(Lab lab)
    {
        (byte red, byte green, byte blue) = Srgb.Encode(Bradford.Adapt(lab.ToXyz(WhitePoints.Pcs), WhitePoints.Pcs, WhitePoints.Srgb));
        return Invariant($"#{red:x2}{green:x2}{blue:x2}");
    }

    /// <summary>L*, a*, b* with one decimal.</summary>
    public static string Words(Lab lab) => Invariant($"{lab.L:0.0} / {lab.A:0.0} / {lab.B:0.0}").Replace('-', '−');

    /// <summary>Inks over a twentieth of a percent, in words.</summary>
    public static string Inks(IReadOnlyList<string> names, IReadOnlyList<double> inks) =>
        inks.Sum() < 0.0005 ? "bare stock" : string.Join(", ", names.Zip(inks).Where(i => i.Second > 0.0005).Select(i => Invariant($"{i.First} {i.Second * 100:0.0} %")));

    /// <summary>Two decimals.</summary>
    public static string Two(double value) => Invariant($"{value:0.00}");
}
