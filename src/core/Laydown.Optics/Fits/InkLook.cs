using Laydown.Optics.Looks;

namespace Laydown.Optics.Fits;

/// <summary>K and S of one full laydown as the model of looks takes them.</summary>
internal static class InkLook
{
    /// <summary>A white that scatters, or a colour film that absorbs: density is K·X over ln 10.</summary>
    internal static LookInk Of(bool white, IReadOnlyList<double> absorption, IReadOnlyList<double> scatter) => white
        ? LookInk.White(scatter, absorption)
        : LookInk.Colour([.. absorption.Select(k => k / Math.Log(10))]);
}
