using System.Numerics;

namespace Laydown.Raster.Screens;

/// <summary>Fourier transform of a square whose side is a power of two, by halving. [Cooley1965]</summary>
internal static class Fourier
{
    /// <summary>Transforms rows, then columns, in place, without a factor.</summary>
    public static void Transform(Complex[] square, int side)
    {
        Complex[] turns = Turns(side), line = new Complex[side];
        for (int row = 0; row < side; row++)
            Line(square.AsSpan(row * side, side), turns);
        for (int column = 0; column < side; column++)
        {
            for (int row = 0; row < side; row++)
                line[row] = square[(row * side) + column];
            Line(line, turns);
            for (int row = 0; row < side; row++)
                square[(row * side) + column] = line[row];
        }
    }

    /// <summary>Transforms one line in place.</summary>
    /// <param name="line">A power of two of values.</param>
    /// <param name="turns">As <see cref="Turns"/> gives them for its length.</param>
    public static void Line(Span<Complex> line, Complex[] turns)
    {
        // Values in the order of their places read backwards in bits.
        for (int at = 1, swap = 0; at < line.Length; at++)
        {
            int bit = line.Length >> 1;
            for (; (swap & bit) != 0; bit >>= 1)
                swap ^= bit;
            swap ^= bit;
            if (at < swap)
                (line[at], line[swap]) = (line[swap], line[at]);
        }

        for (int half = 1; half < line.Length; half *= 2)
        {
            int step = line.Length / (2 * half);
            for (int start = 0; start < line.Length; start += 2 * half)
            {
                for (int at = 0; at < half; at++)
                {
                    Complex odd = line[start + at + half] * turns[at * step], even = line[start + at];
                    (line[start + at], line[start + at + half]) = (even + odd, even - odd);
                }
            }
        }
    }

    /// <summary>exp(−2πi k ÷ side) for the first half of a turn.</summary>
    public static Complex[] Turns(int side) => [.. Enumerable.Range(0, side / 2).Select(k => Complex.FromPolarCoordinates(1, -2 * Math.PI * k / side))];
}
