using Laydown.Optics.Looks;

namespace Laydown.Optics.Fits;

/// <summary>K and S of one full laydown as the model of looks takes them.</summary>
internal static class InkLook
{
    /// <summary>A white that scatters, or a colour that absorbs and may scatter: density is K·X over ln 10.</summary>
    internal static LookInk Of(bool white, IReadOnlyList<double> absorption, IReadOnlyList<double> scatter) => white
        ? LookInk.White(scatter, absorption)
        : LookInk.TurbidColour([.. absorption.Select(k => k / Math.Log(10))], scatter);
}
