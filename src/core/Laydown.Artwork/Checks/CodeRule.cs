namespace Laydown.Artwork.Checks;

/// <summary>What a kind of bar code wants.</summary>
/// <param name="LeastModuleMm">Narrowest module, mm; 0 where none is set.</param>
/// <param name="WantedModuleMm">Recommended module, mm; 0 where none is set.</param>
/// <param name="MostModuleMm">Widest module, mm; 0 where none is set.</param>
/// <param name="QuietModules">Clear zone on its narrower side, modules.</param>
/// <param name="Modules">Modules of the whole symbol with its quiet zones; 0 where it depends on the content.</param>
/// <param name="Source">Key into docs/sources.md, or <c>from memory</c>.</param>
public sealed record CodeRule(
    double LeastModuleMm, double WantedModuleMm, double MostModuleMm, int QuietModules, int Modules, string Source);
