namespace Laydown.Raster.Masks;

/// <summary>A spread keeps the greater value.</summary>
internal readonly struct GreatestOf : IExtreme
{
    public static bool Greatest => true;

    public static TVector Of<TLanes, TVector>(TVector one, TVector other)
        where TLanes : INumberLanes<TVector, ushort>
        where TVector : struct => TLanes.Greatest(one, other);
}
