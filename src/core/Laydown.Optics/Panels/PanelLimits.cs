using Laydown.Measures;

namespace Laydown.Optics.Panels;

/// <summary>How much ink the two colour layers of a panel take.</summary>
public sealed record PanelLimits
{
    /// <summary>Limits, all in parts of one full ink.</summary>
    /// <param name="frontMost">Most of each ink of the layer nearer to the viewer, over 0 to 1.</param>
    /// <param name="frontTotal">Most of their sum, over 0 to 8.</param>
    /// <param name="backMost">Most of each ink of the layer behind the white, over 0 to 1.</param>
    /// <param name="backTotal">Most of their sum, over 0 to 8.</param>
    /// <exception cref="ArgumentException">No ink, or a limit outside its range.</exception>
    public PanelLimits(IReadOnlyList<double> frontMost, double frontTotal, IReadOnlyList<double> backMost, double backTotal)
    {
        foreach (double most in Bounds.NotEmpty(frontMost).Concat(Bounds.NotEmpty(backMost)))
            Bounds.Within(most, 1e-6, 1);
        (FrontMost, BackMost) = ([.. frontMost], [.. backMost]);
        (FrontTotal, BackTotal) = (Bounds.Within(frontTotal, 1e-6, 8), Bounds.Within(backTotal, 1e-6, 8));
    }

    /// <summary>Most of each ink of the layer nearer to the viewer.</summary>
    public IReadOnlyList<double> FrontMost { get; }

    /// <summary>Most of their sum.</summary>
    public double FrontTotal { get; }

    /// <summary>Most of each ink of the layer behind the white.</summary>
    public IReadOnlyList<double> BackMost { get; }

    /// <summary>Most of their sum.</summary>
    public double BackTotal { get; }
}
