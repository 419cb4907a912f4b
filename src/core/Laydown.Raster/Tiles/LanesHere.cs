using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace Laydown.Raster.Tiles;

/// <summary>Which widths this processor has.</summary>
internal static class LanesHere
{
    /// <summary>The widest.</summary>
    public static Lanes Best { get; } = Has(Lanes.Wide512) ? Lanes.Wide512 : Has(Lanes.Wide256) ? Lanes.Wide256 : Lanes.Plain;

    /// <summary>All of them, plain first.</summary>
    public static IReadOnlyList<Lanes> All => [.. Enum.GetValues<Lanes>().Where(Has)];

    /// <summary>Whether the processor has that width.</summary>
    public static bool Has(Lanes lanes) => lanes switch
    {
        Lanes.Wide512 => Vector512.IsHardwareAccelerated && Avx512BW.IsSupported && Avx512Vbmi.IsSupported,
        Lanes.Wide256 => Avx2.IsSupported,
        _ => true,
    };
}
