namespace Laydown.Layout.Patterns;

/// <summary>Patterns cut fractional times.</summary>
/// <param name="Cost">Their cost.</param>
/// <param name="Bound">What no whole numbers of patterns can undercut; 0 where none is known.</param>
/// <param name="Uses">Patterns and times.</param>
internal sealed record CutMix(double Cost, double Bound, IReadOnlyList<(CutPattern Pattern, double Times)> Uses);
