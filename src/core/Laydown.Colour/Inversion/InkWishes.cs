namespace Laydown.Colour.Inversion;

/// <summary>What decides between inks that give the same colour: small prices on each, so that the answer is one and changes smoothly.</summary>
/// <remarks>
/// An ink costs p² (c − t)². With t under 0 its first drop already costs. In the lights that is the dark ink of a pair: so the light ink
/// goes first, up to about <see cref="LightFill"/>, which keeps grain down. In the darks, where black hides grain and the total limit
/// bites, it is the light ink. All prices are far below what a visible colour difference costs. Own construction.
/// </remarks>
public sealed record InkWishes
{
    /// <summary>Laydown of a light ink at which its dark ink takes over, 0 to 1.</summary>
    public const double LightFill = 0.6;

    private const double Plain = 0.03;
    private const double BlackPrice = 1;
    private const double DarkFirstDrop = 0.01;
    private const double LightStrength = 0.3;
    private const double LightFirstDrop = 0.03;
    private const double DarkL = 25;
    private const double BrightL = 75;

    private InkWishes(int? black, double[] price, IReadOnlyList<(int Dark, int Light)> pairs) =>
        (Black, Price, LightPairs) = (black, price, pairs);

    /// <summary>Place of black, or null.</summary>
    public int? Black { get; }

    /// <summary>Light inks with the dark ink whose colour they share.</summary>
    public IReadOnlyList<(int Dark, int Light)> LightPairs { get; }

    /// <summary>p of each ink.</summary>
    internal IReadOnlyList<double> Price { get; }

    /// <summary>t of each ink for a colour of some lightness; black's is not set here.</summary>
    internal void Targets(double lightness, Span<double> target)
    {
        target.Clear();
        double bright = Bright(lightness);
        foreach ((int dark, int light) in LightPairs)
        {
            target[dark] = -DarkFirstDrop * bright / (Price[dark] * Price[dark]);
            target[light] = -LightFirstDrop * (1 - bright) / (Price[light] * Price[light]);
        }
    }

    /// <summary>Gives the light ink of each pair its likely part of the demand for the dark ink: where a search should begin.</summary>
    internal void ShareDemand(double lightness, Span<double> inks)
    {
        foreach ((int dark, int light) in LightPairs)
        {
            double part = Bright(lightness) * Math.Min(inks[dark] / LightStrength, LightFill);
            inks[light] = part;
            inks[dark] = Math.Max(0, inks[dark] - (LightStrength * part));
        }
    }

    private static double Bright(double lightness)
    {
        double part = Math.Clamp((lightness - DarkL) / (BrightL - DarkL), 0, 1);
        return part * part * (3 - (2 * part));
    }

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

        double[] price = [.. inkNames.Select(_ => Plain)];
        if (black is { } k)
            price[k] = BlackPrice;
        foreach ((int dark, int light) in pairs)
        {
            price[light] = Math.Sqrt(DarkFirstDrop * LightStrength / LightFill);
            price[dark] = Plain;
        }

        return new(black, price, pairs);
    }

    /// <summary>Wishes for four inks, black last.</summary>
    public static InkWishes FourInks { get; } = For(["Cyan", "Magenta", "Yellow", "Black"]);
}
