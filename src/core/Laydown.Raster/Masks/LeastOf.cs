namespace Laydown.Raster.Masks;

/// <summary>A choke keeps the lesser value.</summary>
internal readonly struct LeastOf : IExtreme
{
    public static bool Greatest => false;

    public static TVector Of<TLanes, TVector>(TVector one, TVector other)
        where TLanes : INumberLanes<TVector, ushort>
        where TVector : struct => TLanes.Least(one, other);
}
