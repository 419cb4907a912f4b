using Laydown.Measures;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Separation;

/// <summary>How the demand for one hue is shared between its light and its dark ink.</summary>
/// <remarks>
/// Demand D, light L and dark K are laydowns; the light ink holds the share s of the dark ink's colourant, so s·L + K = D.
/// With take-over tone T: K is a straight line from (T, 0) to (full, full), its knee rounded by a parabola from ¾ T to 1¼ T, and
/// L = (D − K) / s. So K never falls, starts without a step in slope, L has one top, below T / s, and L + K never exceeds full laydown
/// (K's slope 1 / (1 − T) stays under 1 / (1 − s) because T ≤ s). In whole codes K is rounded up and L down: both laws hold exactly,
/// and s·L + K lies at most one code below D. Own construction from these laws; no source.
/// </remarks>
public sealed class LightInkSplit
{
    private readonly ushort[] light = new ushort[Tile.Full + 1];
    private readonly ushort[] dark = new ushort[Tile.Full + 1];

    /// <summary>The split for a pair of inks.</summary>
    /// <param name="strength">Colourant of the light ink as a share of the dark ink's, 0.05 to 0.95.</param>
    /// <param name="takeOverPercent">Tone at which the dark ink takes over, percent of full laydown, over 0; lowered where the light
    /// ink's limit demands it.</param>
    /// <param name="lightLimitPercent">Most of the light ink, percent of full laydown, over 0 to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public LightInkSplit(double strength, double takeOverPercent, double lightLimitPercent)
    {
        Strength = Bounds.Within(strength, 0.05, 0.95);
        Bounds.Within(takeOverPercent, 0.1, 100);
        Bounds.Within(lightLimitPercent, 0.1, 100);
        TakeOverPercent = Math.Min(takeOverPercent, strength * lightLimitPercent);
        for (int demand = 0; demand <= Tile.Full; demand++)
        {
            double k = Math.Ceiling((DarkOf(demand / (double)Tile.Full) * Tile.Full) - 1e-9);
            dark[demand] = (ushort)Math.Clamp(k, 0, demand);
            light[demand] = (ushort)Math.Floor(((demand - dark[demand]) / strength) + 1e-9);
        }
    }

    /// <summary>A split by a free curve of the dark ink, straight between its values; light takes what the dark ink leaves.</summary>
    /// <param name="strength">Colourant of the light ink as a share of the dark ink's, 0.05 to 0.95.</param>
    /// <param name="darkPercent">Dark ink at even steps of the demand, percent, from 0 to 100, never falling and never over the
    /// demand.</param>
    /// <exception cref="ArgumentException">The curve is none of this, or leaves the light ink more than full laydown.</exception>
    public LightInkSplit(double strength, IReadOnlyList<double> darkPercent)
    {
        Strength = Bounds.Within(strength, 0.05, 0.95);
        Bounds.Within(darkPercent.Count, 2, Tile.Full);
        for (int i = 0; i < darkPercent.Count; i++)
        {
            double demand = 100.0 * i / (darkPercent.Count - 1), before = i == 0 ? 0 : darkPercent[i - 1];
            double least = Math.Max(before, demand - (100 * strength)) - 1e-9;
            if (!(darkPercent[i] >= least && darkPercent[i] <= demand + 1e-9))
                throw new ArgumentException(
                    Invariant($"Dark ink at {demand} %: found {darkPercent[i]} %; wanted {least:0.###} % to {demand} %."), nameof(darkPercent));
        }

        TakeOverPercent = 100.0 * Enumerable.Range(0, darkPercent.Count).First(i => i == darkPercent.Count - 1
            || darkPercent[i] > 0.2) / (darkPercent.Count - 1);
        for (int demand = 0; demand <= Tile.Full; demand++)
        {
            double at = (double)demand * (darkPercent.Count - 1) / Tile.Full;
            int step = Math.Min((int)at, darkPercent.Count - 2);
            double wanted = darkPercent[step] + ((at - step) * (darkPercent[step + 1] - darkPercent[step]));
            dark[demand] = (ushort)Math.Clamp(Math.Ceiling((wanted / 100 * Tile.Full) - 1e-6), 0, demand);
            light[demand] = (ushort)Math.Min(Tile.Full, Math.Floor(((demand - dark[demand]) / strength) + 1e-9));
        }
    }

    /// <summary>Colourant of the light ink as a share of the dark ink's.</summary>
    public double Strength { get; }

    /// <summary>The take-over tone in use, percent of full laydown: never so high that the light ink would exceed its limit.</summary>
    public double TakeOverPercent { get; }

    /// <summary>Light ink for each of 65536 demands.</summary>
    public ReadOnlySpan<ushort> Light => light;

    /// <summary>Dark ink for each of 65536 demands.</summary>
    public ReadOnlySpan<ushort> Dark => dark;

    private double DarkOf(double demand)
    {
        double takeOver = TakeOverPercent / 100;
        double slope = 1 / (1 - takeOver);
        double knee = Math.Min(takeOver / 2, 1 - takeOver);
        double past = demand - (takeOver - (knee / 2));
        if (past <= 0)
            return 0;
        return past < knee ? slope * past * past / (2 * knee) : slope * (demand - takeOver);
    }
}
