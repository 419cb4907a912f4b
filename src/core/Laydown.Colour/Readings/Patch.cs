using Laydown.Colour.Spaces;

namespace Laydown.Colour.Readings;

/// <summary>One reading of one patch of a chart: what was asked for and what was seen.</summary>
/// <param name="Id">Name of the patch on the chart; the same id twice is the same patch read twice.</param>
/// <param name="Inks">Ink asked for, parts of one full ink, 0 to 1, in the order of the set's ink names.</param>
/// <param name="Lab">Colour under D50, 2° observer, against the perfect diffuser; from the spectrum where there is one.</param>
/// <param name="Spectrum">Spectral reflectance, or null where only the colour was read.</param>
public sealed record Patch(string Id, IReadOnlyList<double> Inks, Lab Lab, Spectrum? Spectrum)
{
    /// <summary>What stood behind the patch while it was read; unsaid in most files.</summary>
    public Behind Behind { get; init; }
}
