using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace Laydown.Raster.Separation;

/// <summary>The total limit of 16 pixels at once by AVX2.</summary>
/// <remarks>
/// Whole numbers are divided in double precision: value × (room / others) lies within 2⁻³⁵ of the true quotient, whose distance to the next whole number is 0 or
/// at least 1/others > 2⁻²²; so 2⁻²⁵ more and the fraction cut off is the quotient rounded down, always.
/// </remarks>
internal static unsafe class TotalLimit256
{
    private const int Lanes = 16;
    private const double Lift = 1.0 / (1 << 25);

    /// <summary>Limits as many pixels of a row as are whole steps.</summary>
    /// <param name="from">Row of each ink.</param>
    /// <param name="to">Where it goes.</param>
    /// <param name="inks">How many inks, up to 64.</param>
    /// <param name="black">Which is black; below 0 for none.</param>
    /// <param name="limit">Largest sum.</param>
    /// <param name="count">Pixels of the row.</param>
    /// <returns>How many pixels are done.</returns>
    public static int Run(ushort** from, ushort** to, int inks, int black, int limit, int count)
    {
        Vector256<int> most = Vector256.Create(limit);
        int x = 0;
        for (; x + Lanes <= count; x += Lanes)
        {
            Vector256<int> low = Vector256<int>.Zero, high = Vector256<int>.Zero;
            for (int ink = 0; ink < inks; ink++)
            {
                Vector256<ushort> values = Vector256.Load(from[ink] + x);
                values.Store(to[ink] + x);
                low += Avx2.ConvertToVector256Int32(values.GetLower());
                high += Avx2.ConvertToVector256Int32(values.GetUpper());
            }

            if (Vector256.GreaterThanAny(Vector256.Max(low, high), most))
                Cut(to, inks, black, limit, x, low, high);
        }

        return x;
    }

    private static void Cut(ushort** to, int inks, int black, int limit, int x, Vector256<int> low, Vector256<int> high)
    {
        Vector256<int> most = Vector256.Create(limit), keptLow = Vector256<int>.Zero, keptHigh = Vector256<int>.Zero;
        if (black >= 0)
        {
            keptLow = Avx2.ConvertToVector256Int32(to[black] + x);
            keptHigh = Avx2.ConvertToVector256Int32(to[black] + x + (Lanes / 2));
            Narrow(Vector256.Min(keptLow, most), Vector256.Min(keptHigh, most)).Store(to[black] + x);
        }

        // The share of each pixel that is left, four pixels a register.
        Vector256<int> roomLow = most - Vector256.Min(keptLow, most), roomHigh = most - Vector256.Min(keptHigh, most);
        Vector256<int> otherLow = low - keptLow, otherHigh = high - keptHigh;
        Vector256<int> overLow = Vector256.GreaterThan(low, most), overHigh = Vector256.GreaterThan(high, most);
        Vector256<double> share0 = Share(roomLow.GetLower(), otherLow.GetLower(), overLow.GetLower());
        Vector256<double> share1 = Share(roomLow.GetUpper(), otherLow.GetUpper(), overLow.GetUpper());
        Vector256<double> share2 = Share(roomHigh.GetLower(), otherHigh.GetLower(), overHigh.GetLower());
        Vector256<double> share3 = Share(roomHigh.GetUpper(), otherHigh.GetUpper(), overHigh.GetUpper());
        for (int ink = 0; ink < inks; ink++)
        {
            if (ink == black)
                continue;
            Vector256<int> one = Avx2.ConvertToVector256Int32(to[ink] + x), two = Avx2.ConvertToVector256Int32(to[ink] + x + (Lanes / 2));
            Narrow(
                Vector256.Create(Scaled(one.GetLower(), share0), Scaled(one.GetUpper(), share1)),
                Vector256.Create(Scaled(two.GetLower(), share2), Scaled(two.GetUpper(), share3))).Store(to[ink] + x);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Share(Vector128<int> room, Vector128<int> others, Vector128<int> over) => Vector256.ConditionalSelect(
        Avx2.ConvertToVector256Int64(over).AsDouble(),
        Avx.ConvertToVector256Double(room) / Avx.ConvertToVector256Double(Vector128.Max(others, Vector128<int>.One)), Vector256<double>.One);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector128<int> Scaled(Vector128<int> values, Vector256<double> share) =>
        Avx.ConvertToVector128Int32WithTruncation((Avx.ConvertToVector256Double(values) * share) + Vector256.Create(Lift));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<ushort> Narrow(Vector256<int> low, Vector256<int> high) =>
        Avx2.Permute4x64(Avx2.PackUnsignedSaturate(low, high).AsInt64(), 0b11_01_10_00).AsUInt16();
}
