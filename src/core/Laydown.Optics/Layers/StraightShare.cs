namespace Laydown.Optics.Layers;

/// <summary>How much of the light that meets a turbid layer with faces behaves as in a clear slab, by the layer's S·X.</summary>
/// <remarks>
/// Two fluxes take the light inside as even in all directions, which is wrong for thin whites: the faces would hold back more than half of
/// light that in truth goes straight on. A mix of slab and two fluxes by this share meets radiative transfer (<see cref="SlabLight"/>) to
/// 0.01 in R at 45:0 and in T up to S·X 2, for a white with g = 0.6 and K/S = 0.002; the nodes are minus the logarithm of the mean of the
/// shares that R and T ask for. Beyond, it fades as exp(−4/3·S·X): constants of a full laydown are read through two fluxes, which are to
/// give the readings back. docs/decisions/0007 says what was measured.
/// </remarks>
internal static class StraightShare
{
    /// <summary>S·X between the nodes.</summary>
    internal const double NodeStep = 0.125;

    private const double Fade = 4.0 / 3.0;
    private const int StepsPerUnit = 128;
    private const int LastUnit = 12;

    private static readonly double[] Shares =
        [.. Enumerable.Range(0, (LastUnit * StepsPerUnit) + 1).Select(i => Make((double)i / StepsPerUnit))];

    /// <summary>Minus the logarithm of the share at S·X 0, 0.125 … 2.</summary>
    internal static ReadOnlySpan<double> Nodes =>
        [
            0, 0.2864, 0.5646, 0.8255, 1.0631, 1.2740, 1.4575, 1.6156, 1.7514,
            1.8685, 1.9705, 2.0605, 2.1412, 2.2144, 2.2819, 2.3447, 2.4037,
        ];

    /// <summary>The share, 1 at nothing, 0 from S·X 12 on.</summary>
    /// <param name="scatter">S times thickness of all that scatters, 0 or more.</param>
    internal static double Of(double scatter)
    {
        double at = scatter * StepsPerUnit;
        if (!(at < Shares.Length - 1))
            return 0;
        int below = (int)at;
        return Shares[below] + ((at - below) * (Shares[below + 1] - Shares[below]));
    }

    private static double Make(double scatter)
    {
        double at = scatter / NodeStep;
        if (at >= Nodes.Length - 1)
            return Math.Exp(-Nodes[^1] - (Fade * (scatter - (NodeStep * (Nodes.Length - 1)))));
        int below = (int)at;
        return Math.Exp(-Nodes[below] - ((at - below) * (Nodes[below + 1] - Nodes[below])));
    }
}
