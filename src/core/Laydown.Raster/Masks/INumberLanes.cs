namespace Laydown.Raster.Masks;

/// <summary>Arithmetic of a register of small whole numbers side by side, first column first.</summary>
/// <typeparam name="TVector">The register.</typeparam>
/// <typeparam name="TElement">One number, without sign.</typeparam>
internal interface INumberLanes<TVector, TElement>
    where TVector : struct
    where TElement : unmanaged
{
    /// <summary>How many numbers.</summary>
    static abstract int Count { get; }

    /// <summary>The same number everywhere.</summary>
    static abstract TVector All(int value);

    static abstract TVector Load(ref TElement from);

    static abstract void Store(TVector vector, ref TElement to);

    /// <summary>Every bit set where a pixel is not the sought one, none where it is. Bytes take bare and full pixels alone, 16 bits take any.</summary>
    static abstract TVector Others(ref ushort from, ushort sought);

    /// <summary>Sum, at most the largest number.</summary>
    static abstract TVector Add(TVector one, TVector other);

    /// <summary>Difference, at least 0.</summary>
    static abstract TVector Subtract(TVector one, TVector other);

    static abstract TVector Least(TVector one, TVector other);

    static abstract TVector Greatest(TVector one, TVector other);

    static abstract TVector And(TVector one, TVector other);

    static abstract TVector Xor(TVector one, TVector other);

    /// <summary>Every bit set where a number is 0, none elsewhere.</summary>
    static abstract TVector WhereZero(TVector vector);

    static abstract bool IsZero(TVector vector);
}
