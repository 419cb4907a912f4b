using Laydown.Measures;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Separation;

/// <summary>Calibration of one ink: laydown wanted to laydown sent, for every value of 16 bits.</summary>
/// <remarks>The curve is drawn over the usable laydown: wanted full sends the ink's limit, so no tones are lost above it. 0 stays 0; never falls.</remarks>
public sealed class InkCurve
{
    private readonly ushort[] sent;

    private InkCurve(ushort[] sent)
    {
        this.sent = sent;
        for (int wanted = 0; wanted < sent.Length; wanted++)
            LeavesAll &= sent[wanted] == wanted;
    }

    /// <summary>Whether every laydown is sent as it was wanted.</summary>
    public bool LeavesAll { get; } = true;

    /// <summary>What is sent for a wanted laydown.</summary>
    public ushort this[ushort wanted] => sent[wanted];

    /// <summary>The whole table: 65536 values, index = wanted.</summary>
    public ReadOnlySpan<ushort> Table => sent;

    /// <summary>A curve through measured steps, straight between them, scaled so that its end sends the limit.</summary>
    /// <param name="stepsPercent">Laydown sent at even steps of laydown wanted, percent, from 0 to 100, never falling; at least two values.</param>
    /// <param name="limitPercent">What wanted full sends, percent of full laydown, 0 to 100.</param>
    /// <exception cref="ArgumentException">The steps do not run from 0 to 100 without falling.</exception>
    public static InkCurve Through(IReadOnlyList<double> stepsPercent, double limitPercent)
    {
        Bounds.Within(limitPercent, 0, 100);
        Check(stepsPercent);
        ushort[] table = new ushort[Tile.Full + 1];
        double perStep = Tile.Full / (double)(stepsPercent.Count - 1);
        double most = Math.Floor(limitPercent * Tile.Full / 100);
        for (int wanted = 0; wanted < table.Length; wanted++)
        {
            int step = Math.Min((int)(wanted / perStep), stepsPercent.Count - 2);
            double share = (wanted / perStep) - step;
            double percent = stepsPercent[step] + (share * (stepsPercent[step + 1] - stepsPercent[step]));
            table[wanted] = (ushort)Math.Min(most, Math.Round(percent * limitPercent / 100 * Tile.Full / 100));
        }

        return new(table);
    }

    /// <summary>A straight curve: sent is the given share of wanted.</summary>
    /// <param name="percent">What wanted full sends, percent of full laydown, 0 to 100.</param>
    public static InkCurve Straight(double percent) => Through([0, 100], percent);

    /// <summary>This curve and another behind it as one: the same values as one after the other.</summary>
    public InkCurve Then(InkCurve next) => new([.. sent.Select(s => next.sent[s])]);

    private static void Check(IReadOnlyList<double> steps)
    {
        bool rises = steps.Count >= 2 && Math.Abs(steps[0]) < 1e-9 && Math.Abs(steps[^1] - 100) < 1e-9;
        for (int i = 1; rises && i < steps.Count; i++)
            rises = steps[i] >= steps[i - 1];
        if (!rises)
            throw new ArgumentException(Invariant($"Curve: found {string.Join(", ", steps)}; wanted 0 to 100 percent, never falling."), nameof(steps));
    }
}
