namespace Laydown.Shop.Run;

/// <summary>One file name of two makes.</summary>
/// <param name="Name">Name of the file.</param>
/// <param name="Is">How far the two are alike.</param>
/// <param name="FirstBytes">Bytes of the first, or null where there is none.</param>
/// <param name="SecondBytes">Bytes of the second, or null.</param>
/// <param name="Pixels">What differs, where pixels do.</param>
public sealed record FileDifference(string Name, Sameness Is, long? FirstBytes, long? SecondBytes, PixelDifference? Pixels)
{
    /// <summary>Whether the two are not the same to whoever works from them.</summary>
    public bool Matters => Is is not (Sameness.SameBytes or Sameness.SamePixels);
}
