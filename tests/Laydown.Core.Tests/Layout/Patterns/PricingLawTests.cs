using Laydown.Layout.Packing;
using Laydown.Layout.Patterns;

namespace Laydown.Core.Tests.Layout.Patterns;

/// <summary>The tables find what trying every filling finds.</summary>
public sealed class PricingLawTests
{
    /// <summary>Worths are whole numbers under 2^24, exact in single precision: no tolerance.</summary>
    [Fact]
    public void Sheets_of_two_stages_are_worth_what_the_best_of_all_fillings_is()
    {
        for (int seed = 1; seed <= 30; seed++)
        {
            (Lie[] lies, float[] worth, int width, int height) = Random(seed);
            StripPricing pricing = new(lies, width, height, 0, int.MaxValue);
            CutPlan plan = pricing.Best(worth, [.. worth.Select(_ => 99)], double.MaxValue);
            Assert.Equal(Strips(lies, worth, width, height), (float)pricing.Limit);
            Assert.Equal((float)pricing.Limit, plan.Counts.Select((n, p) => n * worth[p]).Sum());
        }
    }

    [Fact]
    public void Three_stages_are_worth_no_less_than_two_and_no_more_than_free_growth_of_columns_allows()
    {
        for (int seed = 1; seed <= 30; seed++)
        {
            (Lie[] lies, float[] worth, int width, int height) = Random(seed);
            BandPricing three = new(lies, width, height, 0, int.MaxValue);
            CutPlan plan = three.Best(worth, [.. worth.Select(_ => 99)], double.MaxValue);
            Assert.Equal((float)three.Limit, plan.Counts.Select((n, p) => n * worth[p]).Sum());
            Assert.InRange((float)three.Limit, Strips(lies, worth, width, height), Guillotine(lies, worth, width, height, []));
        }
    }

    [Fact]
    public void A_plan_holds_no_more_of_a_piece_than_wanted()
    {
        for (int seed = 1; seed <= 30; seed++)
        {
            (Lie[] lies, float[] worth, int width, int height) = Random(seed);
            int[] most = [.. worth.Select((_, i) => 1 + (i % 2))];
            foreach (Pricing pricing in new Pricing[] { new StripPricing(lies, width, height, 0, int.MaxValue), new BandPricing(lies, width, height, 0, int.MaxValue) })
                Assert.All(pricing.Best(worth, most, double.MaxValue).Counts.Select((n, p) => (n, p)), c => Assert.True(c.n <= most[c.p]));
        }
    }

    private static (Lie[] Lies, float[] Worth, int Width, int Height) Random(int seed)
    {
        Chance chance = new(seed);
        int pieces = 2 + chance.Below(3);
        return (
            [.. Enumerable.Range(0, pieces).Select(p => (w: 2 + chance.Below(7), h: 2 + chance.Below(6), p)).Select(s => new Lie(s.p, s.w, s.h, s.w, s.h, false))],
            [.. Enumerable.Range(0, pieces).Select(_ => 1f + chance.Below(40))],
            8 + chance.Below(10), 8 + chance.Below(8));
    }

    // Every strip height, every filling of it, every pile of strips.
    private static float Strips(Lie[] lies, float[] worth, int width, int height) =>
        lies.Where(l => l.Across <= height).Select(l => l.Across).Distinct()
            .Select(h => Strip(lies, worth, width, h) + Strips(lies, worth, width, height - h)).DefaultIfEmpty(0).Max();

    private static float Strip(Lie[] lies, float[] worth, int width, int height) =>
        lies.Where(l => l.Along <= width && l.Across <= height).Select(l => worth[l.Piece] + Strip(lies, worth, width - l.Along, height)).DefaultIfEmpty(0).Max();

    // Any edge-to-edge cuts at all.
    private static float Guillotine(Lie[] lies, float[] worth, int width, int height, Dictionary<(int, int), float> known)
    {
        if (known.TryGetValue((width, height), out float value))
            return value;
        value = lies.Where(l => l.Along <= width && l.Across <= height).Select(l => worth[l.Piece]).DefaultIfEmpty(0).Max();
        for (int x = 1; x <= width / 2; x++)
            value = Math.Max(value, Guillotine(lies, worth, x, height, known) + Guillotine(lies, worth, width - x, height, known));
        for (int y = 1; y <= height / 2; y++)
            value = Math.Max(value, Guillotine(lies, worth, width, y, known) + Guillotine(lies, worth, width, height - y, known));
        return known[(width, height)] = value;
    }
}
