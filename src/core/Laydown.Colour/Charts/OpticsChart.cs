using Laydown.Measures;

namespace Laydown.Colour.Charts;

/// <summary>The chart that tells the optics of inks: white in steps, colours alone, on white and under white, on a sheet that light comes
/// through.</summary>
/// <remarks>Steps, repeats and pairs are common practice, no source: every patch has at most one colour, so that K and S of each ink stand
/// alone.</remarks>
public static class OpticsChart
{
    /// <summary>Name of the white.</summary>
    public const string White = "White";

    /// <summary>What is put behind the name of a colour that lies between sheet and white.</summary>
    public const string Under = " under white";

    /// <summary>Fewest and most steps of white.</summary>
    public const int FewestSteps = 11, MostSteps = 21;

    private static readonly double[] Tones = [0.25, 0.5, 0.75, 1];

    /// <summary>What to read with which backing, and the cautions of that work.</summary>
    public static IReadOnlyList<string> Instructions { get; } =
    [
        "Print on one face of a clear sheet, in this order: 1 colours under white, 2 white, 3 colours. Read from the printed side.",
        "Read every patch over black, over white and through (lamp behind, lamp alone = 100 %); two of the three will do.",
        "Lay the sheet flat on the backing without pressing; read each backing alone too, as patch BACKING.",
        "Light box: unplug before opening, keep liquids away, do not look into the bare lamp, mind the warm glass.",
    ];

    /// <summary>The chart.</summary>
    /// <param name="colours">Names of the colour inks, none twice; may be empty.</param>
    /// <param name="steps">Steps of white over the bare sheet, 11 to 21.</param>
    public static Reading<Chart> Make(IReadOnlyList<string> colours, int steps)
    {
        static Reading<Chart> Refused(string field, string found, string wanted) => Reading.Refused<Chart>(new InputFault("chart", null, field, found, wanted));
        if (steps is < FewestSteps or > MostSteps)
            return Refused("steps", Invariant($"{steps}"), Invariant($"{FewestSteps} to {MostSteps}"));
        if (colours.Count > 6 || colours.Distinct(StringComparer.OrdinalIgnoreCase).Count() < colours.Count || colours.Contains(White))
            return Refused("inks", string.Join(", ", colours), "at most six colours, each once");

        // Colours under the white, white, colours on it: the order of the layers is the order of the inks.
        int count = colours.Count, white = count;
        string[] names = [.. colours.Select(c => c + Under), White, .. colours];
        List<ChartPatch> patches = [];
        void Add(string part, int repeats, params (int Ink, double Share)[] inks)
        {
            double[] shares = new double[names.Length];
            foreach ((int ink, double share) in inks)
                shares[ink] = Math.Round(share * 255) / 255;
            for (int i = 0; i < repeats; i++)
                patches.Add(new(Invariant($"P{patches.Count + 1:0000}"), part, shares));
        }

        Add("bare sheet", 4);
        for (int step = 1; step < steps; step++)
            Add("white", 2, (white, step / (double)steps));
        Add("white", 4, (white, 1));
        for (int colour = 0; colour < count; colour++)
        {
            int over = white + 1 + colour;
            foreach (double tone in Tones)
                Add(colours[colour] + " alone", tone == 1 ? 2 : 1, (over, tone));
            foreach (double tone in Tones)
                Add(colours[colour] + " on white", tone == 1 ? 2 : 1, (white, 1), (over, tone));
            Add(colours[colour] + " on half white", 1, (white, 0.5), (over, 1));
            Add(colours[colour] + Under, 1, (colour, 1), (white, 1));
            Add(colours[colour] + " under half white", 1, (colour, 1), (white, 0.5));
        }

        return Reading.Of(new Chart("ink optics", ChartKind.InkOptics, names, 100.0 * names.Length, patches)
        {
            Layers = [.. Layers(count, white)],
            Instructions = Instructions,
        });
    }

    private static IEnumerable<ChartLayer> Layers(int colours, int white)
    {
        if (colours > 0)
            yield return new("colours under white", [.. Enumerable.Range(0, colours)]);
        yield return new("white", [white]);
        if (colours > 0)
            yield return new("colours", [.. Enumerable.Range(white + 1, colours)]);
    }
}
