namespace Laydown.Raster.Masks;

/// <summary>What the wide choke needs of a register besides.</summary>
/// <typeparam name="TVector">The register.</typeparam>
/// <typeparam name="TElement">One number: bytes for short distances, 16 bits for long ones.</typeparam>
internal interface IMaskLanes<TVector, TElement> : INumberLanes<TVector, TElement>
    where TVector : struct
    where TElement : unmanaged
{
    /// <summary>1, 2, 3 … from the first column.</summary>
    static abstract TVector Rising { get; }

    /// <summary>1, 2, 3 … from the last column.</summary>
    static abstract TVector Falling { get; }

    /// <summary>Numbers with no bit or every bit set as bare and full pixels.</summary>
    static abstract void Widen(TVector vector, ref ushort to);

    /// <summary>The entry of a table for each number.</summary>
    /// <param name="at">Numbers under <paramref name="entries"/>.</param>
    /// <param name="table">Entries, with zeros behind them up to a whole number of 128.</param>
    /// <param name="entries">How many count.</param>
    static abstract TVector LookUp(TVector at, TElement[] table, int entries);

    /// <summary>Each number becomes the greatest of itself and what is left of those before it, which lose 1 a column.</summary>
    /// <param name="vector">The numbers.</param>
    /// <param name="reach">Columns after which nothing is left of any number, at least 1.</param>
    static abstract TVector SpreadRight(TVector vector, int reach);

    /// <summary>The same from the columns behind it.</summary>
    static abstract TVector SpreadLeft(TVector vector, int reach);

    /// <summary>The first column's number everywhere.</summary>
    static abstract TVector First(TVector vector);

    /// <summary>The last column's number everywhere.</summary>
    static abstract TVector Last(TVector vector);
}
