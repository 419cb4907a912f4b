namespace Laydown.Shop.Run;

/// <summary>How far the making of a run is.</summary>
/// <param name="RunId">The run.</param>
/// <param name="Step">What is being done, in words.</param>
/// <param name="DonePercent">Done of the whole, percent, never falling.</param>
public sealed record MakeProgress(string RunId, string Step, double DonePercent);
