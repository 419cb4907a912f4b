using Laydown.Measures;

namespace Laydown.Colour.Charts;

/// <summary>Chooses the patches of a chart. The same inks, limits and seed give the same patches.</summary>
/// <remarks>
/// Ink amounts are shares of each ink's limit; patches over the total limit are left out before anything is chosen, so that nothing is
/// clipped onto the limit. Levels, counts and grey shares are common practice, no source.
/// </remarks>
public static class ChartDesign
{
    /// <summary>Most inks of a chart.</summary>
    public const int MostInks = 12;

    private static readonly double[] ColourLevels = [0, 0.4, 0.7, 1], BlackLevels = [0, 0.4, 0.8, 1];

    /// <summary>The patches of a chart.</summary>
    /// <param name="kind">What it is for; not <see cref="ChartKind.InkOptics"/>, which <see cref="OpticsChart"/> designs.</param>
    /// <param name="inks">Inks with their limits, 1 to 12, each name once.</param>
    /// <param name="totalLimitPercent">Largest sum of inks, percent: 100 to 100 × inks.</param>
    /// <param name="seed">Seed of the filling.</param>
    /// <exception cref="ArgumentException">The kind is a chart of ink optics.</exception>
    public static Reading<Chart> Make(ChartKind kind, IReadOnlyList<ChartInk> inks, double totalLimitPercent, int seed)
    {
        static Reading<Chart> Refused(string field, string found, string wanted) =>
            Reading.Refused<Chart>(new InputFault("chart", null, field, found, wanted));
        if (kind == ChartKind.InkOptics)
            throw new ArgumentException("Kind: found ink optics, which is printed in layers; wanted OpticsChart.", nameof(kind));
        if (inks.Count is < 1 or > MostInks)
            return Refused("inks", Invariant($"{inks.Count} inks"), Invariant($"1 to {MostInks} inks"));
        if (inks.GroupBy(i => i.Name, StringComparer.OrdinalIgnoreCase).FirstOrDefault(g => g.Count() > 1) is { } twice)
            return Refused("inks", Invariant($"{twice.Key} {twice.Count()} times"), "each ink once");
        if (!(totalLimitPercent >= 100 && totalLimitPercent <= 100 * inks.Count))
            return Refused("total limit", Invariant($"{totalLimitPercent} %"), Invariant($"100 % to {100 * inks.Count} %"));

        PatchBook book = new(inks, totalLimitPercent);
        Fill(book, kind, seed);
        return Reading.Of(new Chart(NameOf(kind), kind, [.. inks.Select(i => i.Name)], totalLimitPercent, book.Patches));
    }

    /// <summary>Name of a kind as it stands on the sheet and in the file.</summary>
    public static string NameOf(ChartKind kind) => kind switch
    {
        ChartKind.Linearise => "linearise",
        ChartKind.CharacteriseSmall => "characterise small",
        ChartKind.CharacteriseMedium => "characterise medium",
        ChartKind.CharacteriseFull => "characterise full",
        ChartKind.Verify => "verify",
        ChartKind.InkOptics => "ink optics",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Kind: wanted a known kind."),
    };

    private static void Fill(PatchBook book, ChartKind kind, int seed)
    {
        for (int repeat = 0; repeat < 4; repeat++)
            book.Add("bare stock", new double[book.Inks], again: true);
        switch (kind)
        {
            case ChartKind.Linearise:
                Wedges(book, 20, inEffect: true);
                Ladders(book, 10);
                break;
            case ChartKind.Verify:
                Wedges(book, 4, inEffect: false);
                Overprints(book, [1]);
                Greys(book, 5, 0);
                break;
            default:
                (int steps, int nodes, int wanted) = kind switch
                {
                    ChartKind.CharacteriseSmall => (8, 64, 250),
                    ChartKind.CharacteriseMedium => (12, 256, 700),
                    _ => (20, 512, 1500),
                };
                Wedges(book, steps, inEffect: true);
                Nodes(book, nodes);
                Overprints(book, [0.4, 0.7, 1]);
                Greys(book, steps, 0.06);
                SpaceFilling.Fill(book, Math.Max(wanted, book.Patches.Count + (wanted / 4)), seed);
                break;
        }
    }

    // Even in percent, or closer in the lights, where dots grow most: share = t^1.3.
    private static void Wedges(PatchBook book, int steps, bool inEffect)
    {
        for (int ink = 0; ink < book.Inks; ink++)
        {
            for (int step = 1; step <= steps; step++)
                book.Add("wedge " + book.Name(ink), Only(book.Inks, ink, Math.Pow(step / (double)steps, inEffect ? 1.3 : 1)));
        }
    }

    // The same share of two, three and of all inks, rising to the total limit.
    private static void Ladders(PatchBook book, int steps)
    {
        foreach (int[] set in Sets(book.Inks, 2).Concat(Sets(book.Inks, 3)).Append([.. Enumerable.Range(0, book.Inks)]).Where(s =>
            s.Length > 1))
        {
            for (int step = 1; step <= steps; step++)
                book.Add("ladder " + string.Join(" + ", set.Select(book.Name)), Of(book.Inks, set, step / (double)steps));
        }
    }

    private static void Overprints(PatchBook book, double[] levels)
    {
        foreach (int[] set in Sets(book.Inks, 2).Concat(Sets(book.Inks, 3)))
        {
            foreach (double level in levels)
                book.Add("overprint", Of(book.Inks, set, level));
        }
    }

    // Cyan with 0.8 as much magenta and yellow is near neutral; beside it each of the three a little more and a little less.
    private static void Greys(PatchBook book, int steps, double aside)
    {
        int c = book.Find("Cyan"), m = book.Find("Magenta"), y = book.Find("Yellow");
        if (c < 0 || m < 0 || y < 0)
            return;
        for (int step = 1; step <= steps; step++)
        {
            double t = step / (double)steps;
            double[] grey = new double[book.Inks];
            (grey[c], grey[m], grey[y]) = (t, 0.8 * t, 0.8 * t);
            book.Add("grey", grey);
            for (int side = 0; side < (aside > 0 ? 6 : 0); side++)
            {
                double[] near = [.. grey];
                int ink = side / 2 == 0 ? c : side / 2 == 1 ? m : y;
                near[ink] += side % 2 == 0 ? aside : -aside;
                if (near[ink] is >= 0 and <= 1)
                    book.Add("near grey", near);
            }
        }
    }

    // Every combination of levels: corners of all inks first, then inner levels of as many inks as the wanted number of nodes allows.
    private static void Nodes(PatchBook book, int most)
    {
        int black = book.Find("Black");
        int[] levels = [.. Enumerable.Repeat(2, book.Inks)];
        for (int ink = 0; ink < Math.Min(4, book.Inks); ink++)
        {
            foreach (int more in (int[])[3, 4])
            {
                if (levels.Aggregate(1.0, (p, l) => p * l) / levels[ink] * more <= most)
                    levels[ink] = more;
            }
        }

        int all = (int)Math.Min(4096, levels.Aggregate(1.0, (p, l) => p * l));
        for (int number = 0; number < all; number++)
        {
            double[] node = new double[book.Inks];
            for (int ink = 0, rest = number; ink < book.Inks; rest /= levels[ink], ink++)
                node[ink] = Level(ink == black ? BlackLevels : ColourLevels, levels[ink], rest % levels[ink]);
            book.Add("node", node);
        }
    }

    private static double Level(double[] four, int levels, int at) => at == levels - 1 ? 1 : levels == 4 ? four[at] : at * 0.4;

    private static double[] Only(int inks, int ink, double share) => Of(inks, [ink], share);

    private static double[] Of(int inks, int[] set, double share)
    {
        double[] shares = new double[inks];
        foreach (int ink in set)
            shares[ink] = share;
        return shares;
    }

    private static IEnumerable<int[]> Sets(int inks, int size)
    {
        for (int mask = 1; mask < 1 << inks; mask++)
        {
            if (System.Numerics.BitOperations.PopCount((uint)mask) == size)
                yield return [.. Enumerable.Range(0, inks).Where(i => (mask >> i & 1) == 1)];
        }
    }
}
