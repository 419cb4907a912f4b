namespace Laydown.Raster.Masks;

/// <summary>What squares of distances need besides.</summary>
/// <typeparam name="TVector">The register of 16-bit numbers.</typeparam>
internal interface IDistanceLanes<TVector> : IMaskLanes<TVector, ushort>
    where TVector : struct
{
    /// <summary>Product, its lowest 16 bits.</summary>
    static abstract TVector Multiply(TVector one, TVector other);
}
