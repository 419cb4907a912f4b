namespace Laydown.Raster.Masks;

/// <summary>What squares of distances need of a register besides.</summary>
/// <typeparam name="TVector">The register.</typeparam>
/// <typeparam name="TElement">One number: 16 bits, or 32 for long ways.</typeparam>
internal interface IDistanceLanes<TVector, TElement> : INumberLanes<TVector, TElement>
    where TVector : struct
    where TElement : unmanaged
{
    /// <summary>Greatest number; a square so great stands for far away, and the sum of two of them is not less than one.</summary>
    static abstract int Most { get; }

    /// <summary>Product, its lowest bits.</summary>
    static abstract TVector Multiply(TVector one, TVector other);
}
