using Laydown.Measures;

namespace Laydown.Formats.Layouts;

/// <summary>Figures as plain strokes of seven bars, for drawings that hold lines alone.</summary>
internal static class StrokeDigits
{
    // Bars: top, upper left, upper right, middle, lower left, lower right, bottom; bits from the first.
    private static readonly byte[] Bars = [0b1110111, 0b0100100, 0b1011101, 0b1101101, 0b0101110, 0b1101011, 0b1111011, 0b0100101, 0b1111111, 0b1101111];

    private static readonly (double X1, double Y1, double X2, double Y2)[] Places =
        [(0, 2, 1, 2), (0, 1, 0, 2), (1, 1, 1, 2), (0, 1, 1, 1), (0, 0, 0, 1), (1, 0, 1, 1), (0, 0, 1, 0)];

    /// <summary>The strokes of a number.</summary>
    /// <param name="number">0 or more.</param>
    /// <param name="corner">Lower left corner, mm.</param>
    /// <param name="heightMm">Height, mm.</param>
    internal static IEnumerable<IReadOnlyList<PointMm>> Of(int number, PointMm corner, double heightMm)
    {
        double bar = heightMm / 2, x = corner.XMm;
        foreach (char digit in Invariant($"{number}"))
        {
            for (int i = 0; i < Places.Length; i++)
                if ((Bars[digit - '0'] >> i & 1) == 1)
                    yield return [new(x + (bar * Places[i].X1), corner.YMm + (bar * Places[i].Y1)), new(x + (bar * Places[i].X2), corner.YMm + (bar * Places[i].Y2))];
            x += 1.5 * bar;
        }
    }
}
