using Laydown.Measures;

namespace Laydown.Formats.Patches;

/// <summary>Whether a file's numbers are percent or parts of one, told from the numbers themselves; refused where both could be.</summary>
internal static class UnitChoice
{
    /// <summary>What a reflectance under 0 may be from noise alone, as a factor: common practice, no source.</summary>
    public const double Noise = 0.005;

    /// <summary>What to multiply ink values with to have parts of one full ink, or why it cannot be told.</summary>
    /// <param name="file">Name of the file.</param>
    /// <param name="largest">For each ink its name and largest value.</param>
    public static Reading<double> Inks(string file, IReadOnlyList<(string Ink, double Most)> largest)
    {
        (string ink, double most) = largest.MaxBy(i => i.Most);
        if (most > 100.01)
            return Refused(file, ink, Invariant($"values up to {most}"), "percent (0 to 100) or parts of one (0 to 1)");
        if (most is > 1.0001 and < 2 or > 0 and < 0.2)
            return Refused(file, ink, Invariant($"no value over {most}: percent or parts of one"), "a chart with at least one ink at 0.2 to 1 or at 2 % to 100 %");
        if (most <= 1.0001)
            return Reading.Of(1.0);

        foreach ((string other, double itsMost) in largest.Where(i => i.Most is > 0 and <= 1.0001))
            return Refused(file, other, Invariant($"values up to {itsMost} beside {ink} up to {most}"), "the same unit for all inks");
        return Reading.Of(0.01);
    }

    /// <summary>What to multiply reflectance with to have a factor, or why it cannot be told.</summary>
    public static Reading<double> Reflectance(string file, double most, bool saidPercent) => most switch
    {
        > 250 => Refused(file, "spectrum", Invariant($"reflectance up to {most}"), "a factor (0 to 1.6) or percent (10 to 160)"),
        _ when saidPercent => Reading.Of(0.01),
        <= 1.6 => Reading.Of(1.0),
        >= 10 => Reading.Of(0.01),
        _ => Refused(file, "spectrum", Invariant($"reflectance up to {most}: percent or factor"), "a factor (0 to 1.6) or percent with at least one value over 10"),
    };

    private static Reading<double> Refused(string file, string field, string found, string wanted) =>
        Reading.Refused<double>(new InputFault(file, null, field, found, wanted));
}
