using Laydown.Colour.Spectra;
using Laydown.Optics.Looks;

namespace Laydown.Optics.Panels;

/// <summary>A halftoned colour layer: what each ink takes from light that crosses once, and there and back at one place.</summary>
internal sealed class PanelFilm
{
    /// <summary>A layer.</summary>
    internal PanelFilm(IReadOnlyList<LookInk> inks)
    {
        Inks = inks.Count;
        Once = [.. inks.Select(ink => ink.Density.Select(d => 1 - Math.Pow(10, -d)).ToArray())];
        Twice = [.. inks.Select(ink => ink.Density.Select(d => 1 - Math.Pow(10, -2 * d)).ToArray())];
    }

    /// <summary>Number of inks.</summary>
    internal int Inks { get; }

    /// <summary>Share of light a solid takes on one crossing: inks × bands.</summary>
    internal double[][] Once { get; }

    /// <summary>Share it takes there and back.</summary>
    internal double[][] Twice { get; }

    /// <summary>Light left at coverages, band by band; screens are independent, so shares multiply.</summary>
    internal void Cross(ReadOnlySpan<double> coverages, Span<double> once, Span<double> twice)
    {
        once.Fill(1);
        twice.Fill(1);
        for (int ink = 0; ink < Inks; ink++)
        {
            double coverage = coverages[ink];
            if (coverage == 0)
                continue;
            double[] one = Once[ink], two = Twice[ink];
            for (int band = 0; band < Bands.Count; band++)
            {
                once[band] *= 1 - (coverage * one[band]);
                twice[band] *= 1 - (coverage * two[band]);
            }
        }
    }
}
