namespace Laydown.Colour.Gamuts;

/// <summary>Mixtures among which the outermost colours of a print lie.</summary>
internal static class InkSurface
{
    private const int Steps = 20;

    /// <summary>Every two inks run through all their amounts while each other ink is none or full; sums over the limit are scaled to it.</summary>
    internal static IEnumerable<double[]> Of(IReadOnlyList<double> perInk, double total)
    {
        int inks = perInk.Count;
        for (int one = 0; one < inks; one++)
        {
            for (int other = one + 1; other < inks || (inks == 1 && other == 1); other++)
            {
                for (int corner = 0; corner < 1 << inks; corner++)
                {
                    if (((corner >> one) & 1) == 0 && (inks == 1 || ((corner >> other) & 1) == 0))
                    {
                        foreach (double[] inksOf in Face(perInk, total, one, other, corner))
                            yield return inksOf;
                    }
                }
            }
        }
    }

    private static IEnumerable<double[]> Face(IReadOnlyList<double> perInk, double total, int one, int other, int corner)
    {
        for (int i = 0; i <= Steps; i++)
        {
            for (int j = 0; j <= Steps; j++)
            {
                double[] inks = [.. perInk.Select((most, ink) => ink == one ? most * i / Steps : ink == other ? most * j / Steps : most * ((corner >> ink) & 1))];
                double sum = inks.Sum(), scale = sum > total ? total / sum : 1;
                yield return [.. inks.Select(c => c * scale)];
            }
        }
    }
}
