namespace Laydown.Shop.Run;

/// <summary>How one ink of two press files differs.</summary>
/// <param name="Ink">Name of the ink.</param>
/// <param name="Different">Pixels or dots that differ.</param>
/// <param name="FirstMean">Mean value of the first file: codes of 255, or of drops.</param>
/// <param name="SecondMean">Mean value of the second.</param>
public sealed record InkDifference(string Ink, long Different, double FirstMean, double SecondMean);
