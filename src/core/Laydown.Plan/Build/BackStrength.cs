using Laydown.Plan.Orders;
using Laydown.Press.Inks;

namespace Laydown.Plan.Build;

/// <summary>How strong the same picture behind the white must be for a print to look the same by day and lit.</summary>
/// <remarks>
/// Room light crosses the front ink twice and again at each reflection inside, the lamp's light once; what is missing lies behind the white. The thinner the
/// white, the more of the back picture helps by day too, and the more of it is wanted: 40 % + 160 % / S·X, at most 100 %, is a fit to the optics
/// of 124 colours on clear acrylic with whites of S·X 2 to 20, where it stays within 0.2 ΔE00 of the best strength (a test holds it there).
/// </remarks>
public static class BackStrength
{
    /// <summary>White of unknown density: S·X of one full layer.</summary>
    private const double UsualScatter = 8;

    /// <summary>Strength for the least difference between day and lit look, percent of full laydown, over 40 to 100.</summary>
    /// <param name="scatter">S·X of all white between the pictures, over 0.</param>
    public static double BalancedPercent(double scatter) => scatter > 0
        ? Math.Min(100, 40 + (160 / scatter))
        : throw new ArgumentOutOfRangeException(nameof(scatter), scatter, "S·X: wanted over 0.");

    /// <summary>The strength of a wish: as asked for, balanced for the same picture behind one white, else full.</summary>
    /// <remarks>A white that absorbs nothing lets 1 / (1 + S·X) through, so its density in transmission gives S·X.</remarks>
    internal static double Of(BuildWish wish, InkSet inks)
    {
        if (wish.BackPercent is { } asked)
            return asked;
        if (wish.Back != BackPicture.Same || wish.SeenFrom == Laydown.Press.Stacks.SeenFrom.BothSides)
            return 100;
        double one = inks.Find(InkRole.White) is { SolidDensity: > 0 } white ? Math.Pow(10, white.SolidDensity) - 1 : UsualScatter;
        double percent = wish.WhitePercent > 0 ? wish.WhitePercent : 100;
        return Math.Round(BalancedPercent(one * percent / 100));
    }
}
