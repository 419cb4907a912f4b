namespace Laydown.Colour.Charts;

/// <summary>Fills the inks' space with patches as far from each other as they get, denser in the lights and near grey.</summary>
/// <remarks>
/// Each new patch is the one of 24 candidates that lies furthest from all there are, in shares to the power 0.7. Candidates are chance
/// from a seed to the power 1.4; every fourth is drawn towards equal shares. Candidates over the limit are thrown away, never moved.
/// Best of many candidates: common practice, no source.
/// </remarks>
internal static class SpaceFilling
{
    private const int Candidates = 24, MostTries = 4000;

    /// <summary>Adds patches until there are <paramref name="wanted"/>, or no candidate keeps the limit.</summary>
    internal static void Fill(PatchBook book, int wanted, int seed)
    {
        ChartChance chance = new(seed);
        List<double[]> there = [.. book.Patches.Select(p => Place(p.Inks.Select((v, i) => v / book.Most(i))))];
        for (int idle = 0; book.Patches.Count < wanted && idle < 50;)
        {
            double[]? best = null;
            double far = -1;
            for (int taken = 0, tries = 0; taken < Candidates && tries < MostTries; tries++)
            {
                double[] shares = Candidate(book.Inks, chance);
                if (!book.Keeps(shares))
                    continue;
                taken++;
                double[] place = Place(shares);
                double near = Nearest(there, place, far);
                if (near > far)
                    (best, far) = (shares, near);
            }

            if (best is not null && book.Add("filling", best))
                there.Add(Place(best));
            else
                idle++;
        }
    }

    // A number of inks first: patches of few inks are what pictures are made of, and what many inks under a limit would hardly ever give.
    private static double[] Candidate(int inks, ChartChance chance)
    {
        double[] shares = new double[inks];
        int used = 1 + chance.Below(inks);
        bool grey = chance.Below(4) == 0;
        double middle = Math.Pow(chance.Part(), 1.4);
        for (int ink = 0; ink < inks; ink++)
        {
            bool on = chance.Part() * inks < used;
            double own = Math.Pow(chance.Part(), 1.4);
            shares[ink] = !on ? 0 : grey ? Math.Clamp(middle + (0.2 * (own - 0.5)), 0, 1) : own;
        }

        return shares;
    }

    private static double[] Place(IEnumerable<double> shares) => [.. shares.Select(s => Math.Pow(s, 0.7))];

    // Squared distance to the nearest; gives up once it is no further than the best candidate so far.
    private static double Nearest(List<double[]> there, double[] place, double far)
    {
        double nearest = double.PositiveInfinity;
        for (int at = 0; at < there.Count && nearest > far; at++)
        {
            double sum = 0;
            for (int i = 0; i < place.Length; i++)
                sum += (there[at][i] - place[i]) * (there[at][i] - place[i]);
            nearest = Math.Min(nearest, sum);
        }

        return nearest;
    }
}
