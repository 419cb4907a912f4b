namespace Laydown.Colour.Fits;

/// <summary>Ways to model a print from its chart.</summary>
public enum FitKind
{
    /// <summary>Solids and overprints with one coverage curve an ink: Yule–Nielsen modified Neugebauer.</summary>
    Neugebauer,

    /// <summary>The same between nodes that the chart has measured: cellular.</summary>
    Cellular,

    /// <summary>A regression over all patches whose prior is Neugebauer's mixture.</summary>
    Regression,
}
