using Laydown.Formats.Icc;

namespace Laydown.Intake.Artwork;

/// <summary>An RGB profile in which every colour is white: with it, only CMYK content leaves ink in a measuring render.</summary>
internal static class CmykOnly
{
    /// <summary>The profile: tone curves that are 1 throughout.</summary>
    public static byte[] WhiteProfile() => MatrixProfile.Rgb(
        "all white", (0.4360, 0.2225, 0.0139), (0.3851, 0.7169, 0.0971), (0.1431, 0.0606, 0.7139), ushort.MaxValue, ushort.MaxValue);
}
