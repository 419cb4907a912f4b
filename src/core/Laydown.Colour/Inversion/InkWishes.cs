namespace Laydown.Colour.Inversion;

/// <summary>What decides between inks that give the same colour: small prices on each, so that the answer is one and changes smoothly.</summary>
/// <remarks>
/// An ink costs p² (c − t)². With t under 0 its first drop already costs: so a light ink goes first, up to about
/// <see cref="LightFill"/>, before its dark ink comes in, which keeps grain down. All prices are far below what a visible colour
/// difference costs. Own construction.
/// </remarks>
public sealed record InkWishes
{
    /// <summary>Laydown of a light ink at which its dark ink takes over, 0 to 1.</summary>
    public const double LightFill = 0.6;

    private const double Plain = 0.03;
    private const double BlackPrice = 1;
    private const double DarkFirstDrop = 0.05;
    private const double LightStrength = 0.3;

    private InkWishes(int? black, double[] price, double[] target, IReadOnlyList<(int Dark, int Light)> pairs) =>
        (Black, Price, Target, LightPairs) = (black, price, target, pairs);

    /// <summary>Place of black, or null.</summary>
    public int? Black { get; }

    /// <summary>Light inks with the dark ink whose colour they share.</summary>
    public IReadOnlyList<(int Dark, int Light)> LightPairs { get; }

    /// <summary>p of each ink.</summary>
    internal IReadOnlyList<double> Price { get; }

    /// <summary>t of each ink; black's is set for each colour.</summary>
    internal IReadOnlyList<double> Target { get; }

    /// <summary>Wishes for inks by their names: Black, and Light X beside X.</summary>
    /// <param name="inkNames">Names in order; with four inks of other names the last is black.</param>
    public static InkWishes For(IReadOnlyList<string> inkNames)
    {
        int found = inkNames.ToList().FindIndex(n => string.Equals(n, "Black", StringComparison.OrdinalIgnoreCase));
        int? black = found >= 0 ? found : null;
        List<(int Dark, int Light)> pairs = [];
        foreach ((int light, string name) in inkNames.Index())
        {
            int dark = name.StartsWith("Light ", StringComparison.OrdinalIgnoreCase)
                ? inkNames.ToList().FindIndex(n => string.Equals(n, name[6..], StringComparison.OrdinalIgnoreCase)) : -1;
            if (dark >= 0)
                pairs.Add((dark, light));
        }

        double[] price = [.. inkNames.Select(_ => Plain)], target = new double[inkNames.Count];
        if (black is { } k)
            price[k] = BlackPrice;
        foreach ((int dark, int light) in pairs)
        {
            price[light] = Math.Sqrt(DarkFirstDrop * LightStrength / LightFill);
            price[dark] = Plain;
            target[dark] = -DarkFirstDrop / (price[dark] * price[dark]);
        }

        return new(black, price, target, pairs);
    }

    /// <summary>Wishes for four inks, black last.</summary>
    public static InkWishes FourInks { get; } = For(["Cyan", "Magenta", "Yellow", "Black"]);
}
