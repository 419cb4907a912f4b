namespace Laydown.Optics.Fits;

/// <summary>One ink as its readings tell it.</summary>
/// <param name="Ink">Name.</param>
/// <param name="Absorption">K·X of one full laydown, 36 bands, none under 0.</param>
/// <param name="Scatter">S·X of one full laydown, 36 bands; all 0 for a colour that needs none.</param>
/// <param name="AbsorptionError">Standard error of each K·X, from how far readings lie from the model and repeats from each other.</param>
/// <param name="ScatterError">Standard error of each S·X.</param>
/// <param name="Asked">Shares asked of the press, rising, from 0 to 1.</param>
/// <param name="Acting">Shares of one full laydown that act, from 0 to 1, never falling.</param>
/// <param name="OverBlack">Number of readings over black.</param>
/// <param name="OverWhite">Number of readings over white.</param>
/// <param name="Through">Number of readings through.</param>
public sealed record FittedInk(
    string Ink,
    IReadOnlyList<double> Absorption,
    IReadOnlyList<double> Scatter,
    IReadOnlyList<double> AbsorptionError,
    IReadOnlyList<double> ScatterError,
    IReadOnlyList<double> Asked,
    IReadOnlyList<double> Acting,
    int OverBlack,
    int OverWhite,
    int Through)
{
    /// <summary>What acts where a share is asked for: straight between the steps that were read.</summary>
    /// <param name="share">Part of one full laydown asked, 0 to 1.</param>
    public double ActingAt(double share)
    {
        int above = 1;
        while (above < Asked.Count - 1 && Asked[above] < share)
            above++;
        double at = (share - Asked[above - 1]) / (Asked[above] - Asked[above - 1]);
        return Acting[above - 1] + (Math.Clamp(at, 0, 1) * (Acting[above] - Acting[above - 1]));
    }
}
