using Laydown.Colour.Spaces;

namespace Laydown.Optics.Panels;

/// <summary>Moves of both views when something is not as planned, on a sample of pixels.</summary>
internal sealed class Robustness(PanelPlan plan, JudgedPixels pixels, int[] sample)
{
    /// <summary>The same laydown in another model of the panel; by another lamp the eye takes the bare panel's new white.</summary>
    internal RobustnessRow Of(string what, PanelModel changed)
    {
        double strength = plan.WhiteStrengths[^1];
        double[] bare = new double[plan.Model.InkCount];
        Xyz was = plan.Model.At(strength).See(bare).Night, now = changed.At(strength).See(bare).Night;
        Xyz white = changed.Night.Lamp == plan.Model.Night.Lamp ? plan.Aim.NightWhite : now.Times(plan.Aim.NightWhite.Y / was.Y);
        (float Day, float Night)[] moves = new (float, float)[sample.Length];
        (Lab Day, Lab Night)[] seen = pixels.See(changed, sample, (light, inks) =>
        {
            (Xyz day, Xyz night) = light.See(inks);
            return (plan.Aim.SeenByDay(day), Lab.From(night, white));
        });
        for (int i = 0; i < sample.Length; i++)
            moves[i] = Move(sample[i], seen[i].Day, seen[i].Night);
        return Row(what, moves);
    }

    /// <summary>The layer behind moved against the layer in front, diagonally.</summary>
    /// <param name="what">Its name.</param>
    /// <param name="width">Pixels across.</param>
    /// <param name="byPixels">How far.</param>
    internal RobustnessRow Moved(string what, int width, double byPixels)
    {
        (float Day, float Night)[] moves = new (float, float)[sample.Length];
        double part = byPixels / Math.Sqrt(2);
        Parallel.For(0, sample.Length, i =>
        {
            Span<double> inks = stackalloc double[plan.Model.InkCount];
            Inks(sample[i], width, part, inks);
            (Lab day, Lab night) = plan.Seen(inks, pixels.Strength[sample[i]] / 255.0);
            moves[i] = Move(sample[i], day, night);
        });
        return Row(what, moves);
    }

    // Inks in front stay; those behind are taken from between pixels down to the right.
    private void Inks(int pixel, int width, double part, Span<double> inks)
    {
        pixels.InksOf(pixel, inks);
        int whole = (int)part, x = pixel % width, y = pixel / width, height = pixels.Count / width;
        double rest = part - whole;
        Span<double> corner = stackalloc double[inks.Length];
        inks[plan.Model.FrontInks..].Clear();
        for (int dy = 0; dy <= 1; dy++)
        {
            for (int dx = 0; dx <= 1; dx++)
            {
                double weight = (dx == 1 ? rest : 1 - rest) * (dy == 1 ? rest : 1 - rest);
                pixels.InksOf((Math.Min(height - 1, y + whole + dy) * width) + Math.Min(width - 1, x + whole + dx), corner);
                for (int ink = plan.Model.FrontInks; ink < inks.Length; ink++)
                    inks[ink] += weight * corner[ink];
            }
        }
    }

    private (float Day, float Night) Move(int pixel, Lab day, Lab night)
    {
        ReadOnlySpan<float> was = pixels.Seen.AsSpan(6 * pixel, 6);
        return ((float)Ciede2000.Between(day, new(was[0], was[1], was[2])), (float)Ciede2000.Between(night, new(was[3], was[4], was[5])));
    }

    private static RobustnessRow Row(string what, (float Day, float Night)[] moves) =>
        new(what, DifferenceSummary.Of([.. moves.Select(m => m.Day)]), DifferenceSummary.Of([.. moves.Select(m => m.Night)]));
}
