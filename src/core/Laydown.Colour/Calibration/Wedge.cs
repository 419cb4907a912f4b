namespace Laydown.Colour.Calibration;

/// <summary>The single-ink steps of one ink, from the bare stock to the full ink.</summary>
/// <param name="Ink">Name of the ink.</param>
/// <param name="Steps">Steps, ink ascending from 0 to 1, each ink value once; at least five.</param>
/// <param name="Rejected">Readings that were left out, each in a sentence.</param>
public sealed record Wedge(string Ink, IReadOnlyList<WedgeStep> Steps, IReadOnlyList<string> Rejected)
{
    /// <summary>The bare stock, or the black or clear that a white wedge lies on.</summary>
    public WedgeStep Paper => Steps[0];

    /// <summary>The full ink.</summary>
    public WedgeStep Solid => Steps[^1];
}
