namespace Laydown.Layout.Search;

/// <summary>How long and with what chance a search goes on.</summary>
/// <param name="Seed">Seed: the same seed and the same number of iterations give the same layout on every machine.</param>
/// <param name="Iterations">Most iterations of each worker; 0 gives the first answer.</param>
/// <param name="Workers">Threads; each has its own chance, and they exchange only at fixed counts of iterations.</param>
/// <remarks>A search also ends where its stop is asked for, at the next border of an iteration, and gives the best it has; the core knows no clock.</remarks>
public sealed record SearchRules(int Seed = 1, long Iterations = long.MaxValue, int Workers = 1);
