using Laydown.Optics.Layers;

namespace Laydown.Optics.Looks;

/// <summary>What readings of an opal sheet say of its inside: the amounts that radiative transfer needs for them, and the inside that gives
/// the same look at 45:0 and before a lamp through the formulas of a stack.</summary>
/// <param name="Amount">S·X and K·X of the sheet.</param>
/// <param name="Inside">The part of the core for light that is spread.</param>
/// <param name="Straight">Transmittance of the inside for light that nothing spreads, 0 to 1.</param>
internal sealed record OpalReading(TurbidAmount Amount, LayerLight Inside, double Straight)
{
    // Deflections of the pigments of opal sheets and white inks (from memory).
    private const double Asymmetry = 0.6;
    private const int Directions = 8;
    private const int MostSteps = 14;
    private const double LeastLoss = 2e-4;
    private const double Digits = 0.005;

    /// <summary>Finds the amounts by Newton's steps on ln S·X and ln K·X; null where no slab looks so.</summary>
    /// <param name="reflectance">Diffuse reflectance in air, gloss included.</param>
    /// <param name="transmittance">Diffuse transmittance in air.</param>
    /// <param name="start">Amounts to start from, such as those of the band before.</param>
    internal static OpalReading? Of(double reflectance, double transmittance, TurbidAmount start)
    {
        double lost = 1 - reflectance - transmittance;
        double scatter = Math.Log(Math.Clamp(start.Scatter, 0.01, 100)), absorption = Math.Log(Math.Clamp(start.Absorption, 1e-4, 10));
        bool lossless = lost < LeastLoss;
        for (int step = 0; step < MostSteps; step++)
        {
            (double r, double l, SlabReading reading) = Miss(scatter, absorption, reflectance, lost, lossless);
            if (Math.Abs(r) < 1e-4 && (lossless || Math.Abs(l) < 2e-3))
                return Found(AmountOf(scatter, absorption, lossless), reading);

            // The slopes by a small step of each unknown, then the step that would meet both readings, at most one in each logarithm.
            const double small = 1e-3;
            (double rs, double ls, _) = Miss(scatter + small, absorption, reflectance, lost, lossless);
            (double rk, double lk, _) = lossless ? (r, l + small, reading) : Miss(scatter, absorption + small, reflectance, lost, lossless);
            double a = (rs - r) / small, b = (rk - r) / small, c = (ls - l) / small, d = (lk - l) / small, det = (a * d) - (b * c);
            if (!(Math.Abs(det) > 1e-9))
                return null;
            scatter -= Math.Clamp(((d * r) - (b * l)) / det, -1, 1);
            absorption -= lossless ? 0 : Math.Clamp(((a * l) - (c * r)) / det, -1, 1);
            if (!(scatter is > -7 and < 6 && absorption is > -14 and < 3))
                return null;
        }

        return null;
    }

    /// <summary>The clear sheet of that diffuse transmittance: the nearest to readings that are darker than a slab's own faces.</summary>
    /// <param name="transmittance">Diffuse transmittance in air.</param>
    internal static OpalReading NearestClear(double transmittance)
    {
        double low = 0, high = 20;
        for (int i = 0; i < 40; i++)
        {
            double middle = (low + high) / 2;
            bool tooLight = SlabLight.Of(new SlabMatter(middle, 0), Boundary.Ink, Directions).DiffuseTransmittance > transmittance;
            (low, high) = tooLight ? (middle, high) : (low, middle);
        }

        double straight = Math.Exp(-low);
        return new(new(2 * low, 0), LayerLight.Symmetric(0, straight), straight);
    }

    /// <summary>Whether readings are darker than the clear sheet that lets as much through, or lighter by no more than the digits of a
    /// reading.</summary>
    internal static bool IsDarkerThanClear(double reflectance, double transmittance)
    {
        double thickness = -Math.Log(NearestClear(transmittance).Straight);
        return reflectance <= SlabLight.Of(new SlabMatter(thickness, 0), Boundary.Ink, Directions).DiffuseReflectance + Digits;
    }

    private static TurbidAmount AmountOf(double scatter, double absorption, bool lossless) =>
        new(lossless ? 0 : Math.Exp(absorption), Math.Exp(scatter));

    private static (double Reflectance, double Loss, SlabReading Reading) Miss(
        double scatter, double absorption, double reflectance, double lost, bool lossless)
    {
        SlabReading found = SlabLight.Of(SlabMatter.From(AmountOf(scatter, absorption, lossless), Asymmetry), Boundary.Ink, Directions);
        double loss = lossless ? 0 : Math.Log(Math.Max(1e-9, 1 - found.DiffuseReflectance - found.DiffuseTransmittance) / lost);
        return (found.DiffuseReflectance - reflectance, loss, found);
    }

    // R/(T_in·T_out) and T/(T_in'·T_out) are half the sum and half the difference of P/(1 − r_i·P), P = r + t and r − t.
    private static OpalReading Found(TurbidAmount amount, SlabReading reading)
    {
        Boundary surface = Boundary.Ink;
        double straight = Math.Exp(-amount.Absorption / 2), share = StraightShare.Of(amount.Scatter);
        double slab = StackOptics.Through(surface.Normal, straight);
        double r = reading.ReflectanceAt45 / (1 - share) / (surface.InFrom45 * surface.OutNormal);
        double t = Math.Max(0, (reading.NormalTransmittance - (share * slab)) / (1 - share)) / (surface.InDiffuse * surface.OutNormal);
        double sum = Inner(r + t), difference = Inner(r - t);

        // A sheet that loses next to nothing may come out a hair over 1.
        double over = Math.Max(1, sum);
        double back = Math.Max(0, (sum + difference) / 2 / over);
        return new(amount, LayerLight.Symmetric(back, Math.Clamp((sum - difference) / 2 / over, 0, 1 - back)), straight);

        double Inner(double u) => u / (1 + (surface.DiffuseInside * u));
    }
}
