namespace Laydown.Geometry.Outlines;

/// <summary>What is mended in lines that came from files, and what is too much.</summary>
/// <param name="JoinMm">Ends nearer than this are joined, mm; 0 or more (common practice, no source).</param>
/// <param name="LeastAreaMm2">A ring of less area is no piece and no hole, mm²; over 0.</param>
/// <param name="MostMm">Largest side of all rings together, mm.</param>
/// <param name="MostContours">Most lines taken.</param>
/// <param name="MostPoints">Most corners taken, all lines together.</param>
public sealed record OutlineRules(
    double JoinMm = 0.2, double LeastAreaMm2 = 1, double MostMm = 100_000, int MostContours = 300_000, int MostPoints = 5_000_000);
