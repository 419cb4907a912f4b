namespace Laydown.Raster.Masks;

/// <summary>Which of two values a choke or a spread keeps.</summary>
internal interface IExtreme
{
    /// <summary>Whether it keeps the greater one.</summary>
    static abstract bool Greatest { get; }

    /// <summary>The one that is kept, number by number.</summary>
    static abstract TVector Of<TLanes, TVector>(TVector one, TVector other)
        where TLanes : INumberLanes<TVector, ushort>
        where TVector : struct;
}
