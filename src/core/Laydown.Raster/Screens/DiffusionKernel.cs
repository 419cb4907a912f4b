using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Screens;

/// <summary>One row of error diffusion for several blocks at once: column after column, a lane for each block. [Floyd1976]</summary>
internal sealed class DiffusionKernel
{
    private readonly DiffusionLevels levels;
    private readonly DiffusionTable table;
    private readonly int lanes;
    private readonly short[] errors;

    /// <summary>A kernel with its memory of the row above.</summary>
    /// <param name="levels">Drops.</param>
    /// <param name="table">Weights by tone.</param>
    /// <param name="lanes">Blocks at once: 16 for 256 bits, 32 for 512, any number without.</param>
    /// <param name="columns">Columns of a row, margin included.</param>
    public DiffusionKernel(DiffusionLevels levels, DiffusionTable table, int lanes, int columns)
    {
        this.levels = levels;
        this.table = table;
        this.lanes = lanes;
        Columns = columns;
        errors = new short[(columns + 2) * lanes];
        Tones = new ushort[columns * lanes];
        Texture = new ushort[columns * lanes];
        Low = new uint[columns];
        High = new uint[columns];
    }

    /// <summary>Columns of a row, margin included.</summary>
    public int Columns { get; }

    /// <summary>Contone, columns × lanes.</summary>
    public ushort[] Tones { get; }

    /// <summary>Ranks of the array, columns × lanes.</summary>
    public ushort[] Texture { get; }

    /// <summary>Low bit of each code: a word for each column, a bit for each lane.</summary>
    public uint[] Low { get; }

    /// <summary>High bit of each code, likewise.</summary>
    public uint[] High { get; }

    /// <summary>Diffuses a row from one end to the other.</summary>
    /// <param name="width">Width to work with.</param>
    /// <param name="backwards">From the right to the left.</param>
    public void Row(Lanes width, bool backwards)
    {
        if (width == Lanes.Wide512)
            Row512(backwards);
        else if (width == Lanes.Wide256)
            Row256(backwards);
        else
            Plain(backwards);
    }

    private static short Share(short error, int of256) => (short)(((error * (of256 << 7)) + 0x4000) >> 15);

    private static short Saturated(int value) => (short)Math.Clamp(value, short.MinValue, short.MaxValue);

    private void Plain(bool backwards)
    {
        Array.Clear(Low);
        Array.Clear(High);
        int step = backwards ? -1 : 1;
        for (int lane = 0; lane < lanes; lane++)
        {
            short ahead = 0, below = 0, next = 0;
            int column = backwards ? Columns - 1 : 0;
            for (int count = 0; count < Columns; count++, column += step)
            {
                int at = (column * lanes) + lane;
                short tone = DiffusionLevels.Value(Tones[at]);
                short value = Saturated(Saturated(tone + errors[at + lanes]) + ahead);
                int entry = Math.Min(Math.Min(tone, DiffusionLevels.Full - tone) >> 9, DiffusionTable.Size - 1);
                short error = Dot(tone, value, Share(DiffusionLevels.Texture(Texture[at]), table.Strength[entry]), column, lane);

                // What goes down is complete, and stored, once the dot after it is set.
                short forward = Share(error, table.Ahead[entry]), back = Share(error, table.Behind[entry]), down = Share(error, table.Below[entry]);
                errors[((column + 1 - step) * lanes) + lane] = (short)(below + back);
                below = (short)(next + down);
                next = (short)(error - forward - back - down);
                ahead = forward;
            }

            errors[((column + 1 - step) * lanes) + lane] = below;
        }
    }

    // Sets the code and returns what is left; bare stays bare and full stays full, whatever comes from elsewhere.
    private short Dot(short tone, short value, short texture, int column, int lane)
    {
        int code = 0, volume = 0;
        for (int drop = 0; drop < levels.Sizes.Length; drop++)
        {
            short threshold = (short)(levels.Middles[drop] + (short)(((texture * levels.Reaches[drop]) + 0x4000) >> 15));
            bool reached = (value > threshold && tone != 0) || tone == DiffusionLevels.Full;
            code += reached ? 1 : 0;
            volume += reached ? levels.Sizes[drop] : 0;
        }

        Low[column] |= (uint)(code & 1) << lane;
        High[column] |= (uint)(code >> 1) << lane;
        return tone is 0 or DiffusionLevels.Full ? (short)0 : (short)(value - volume);
    }

    private void Row512(bool backwards)
    {
        int step = backwards ? -1 : 1, column = backwards ? Columns - 1 : 0;
        ref ushort tones = ref MemoryMarshal.GetArrayDataReference(Tones);
        ref ushort ranks = ref MemoryMarshal.GetArrayDataReference(Texture);
        ref short kept = ref MemoryMarshal.GetArrayDataReference(errors);
        Vector512<byte> strengths = Wide(table.Strength), aheads = Wide(table.Ahead), behinds = Wide(table.Behind), belows = Wide(table.Below);
        Vector512<short> full = Vector512.Create(DiffusionLevels.Full), ahead = default, below = default, next = default;
        for (int count = 0; count < Columns; count++, column += step)
        {
            nuint at = (nuint)(column * 32);
            Vector512<ushort> half = Avx512BW.Average(Vector512.LoadUnsafe(ref tones, at), Vector512<ushort>.Zero);
            Vector512<short> tone = Avx512BW.Average(half, Vector512<ushort>.Zero).AsInt16();
            Vector512<short> entry = Vector512.Min(Vector512.Min(tone, full - tone) >>> 9, Vector512.Create((short)15)) | Vector512.Create(unchecked((short)0xFF00));
            Vector512<short> texture = (Vector512.LoadUnsafe(ref ranks, at) >>> 2).AsInt16() - Vector512.Create((short)8192);
            texture = Avx512BW.MultiplyHighRoundScale(texture, Entry(strengths, entry));
            Vector512<short> value = Avx512BW.AddSaturate(Avx512BW.AddSaturate(tone, Vector512.LoadUnsafe(ref kept, at + 32)), ahead);
            Vector512<short> error = Dots512(tone, value, texture, full, column);
            Vector512<short> forward = Avx512BW.MultiplyHighRoundScale(error, Entry(aheads, entry));
            Vector512<short> back = Avx512BW.MultiplyHighRoundScale(error, Entry(behinds, entry));
            Vector512<short> down = Avx512BW.MultiplyHighRoundScale(error, Entry(belows, entry));
            (below + back).StoreUnsafe(ref kept, (nuint)((column + 1 - step) * 32));
            below = next + down;
            next = error - forward - back - down;
            ahead = forward;
        }

        below.StoreUnsafe(ref kept, (nuint)((column + 1 - step) * 32));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Vector512<short> Dots512(Vector512<short> tone, Vector512<short> value, Vector512<short> texture, Vector512<short> full, int column)
    {
        // Bare never exceeds its threshold, full always does. The sign of a difference is at hand sooner than the result of a comparison.
        Vector512<short> solid = Vector512.Equals(tone, full), bare = Vector512.Equals(tone, Vector512<short>.Zero), volume = default;
        Vector512<short> never = bare & Vector512.Create(short.MaxValue), always = solid & Vector512.Create(short.MinValue), open = ~(bare | solid);
        uint low = 0, high = 0;
        for (int drop = 0; drop < levels.Sizes.Length; drop++)
        {
            // One drop takes the whole texture: a factor of 32 767 of 32 768 would leave values of this size as they are.
            Vector512<short> part = levels.Sizes.Length == 1 ? texture : Avx512BW.MultiplyHighRoundScale(texture, Vector512.Create(levels.Reaches[drop]));
            Vector512<short> threshold = ((Vector512.Create(levels.Middles[drop]) + part) & open) | never | always;
            Vector512<short> set = Avx512BW.SubtractSaturate(threshold, value) >> 15;
            volume += set & Vector512.Create(levels.Sizes[drop]);
            uint bits = (uint)set.ExtractMostSignificantBits();
            low ^= bits;
            high = drop == 1 ? bits : high;
        }

        (Low[column], High[column]) = (low, high);
        return (value - volume) & open;
    }

    private void Row256(bool backwards)
    {
        int step = backwards ? -1 : 1, column = backwards ? Columns - 1 : 0;
        ref ushort tones = ref MemoryMarshal.GetArrayDataReference(Tones);
        ref ushort ranks = ref MemoryMarshal.GetArrayDataReference(Texture);
        ref short kept = ref MemoryMarshal.GetArrayDataReference(errors);
        Vector256<byte> strengths = Half(table.Strength), aheads = Half(table.Ahead), behinds = Half(table.Behind), belows = Half(table.Below);
        Vector256<short> full = Vector256.Create(DiffusionLevels.Full), ahead = default, below = default, next = default;
        for (int count = 0; count < Columns; count++, column += step)
        {
            nuint at = (nuint)(column * 16);
            Vector256<ushort> half = Avx2.Average(Vector256.LoadUnsafe(ref tones, at), Vector256<ushort>.Zero);
            Vector256<short> tone = Avx2.Average(half, Vector256<ushort>.Zero).AsInt16();
            Vector256<short> entry = Avx2.Min(Avx2.Min(tone, full - tone) >>> 9, Vector256.Create((short)15)) | Vector256.Create(unchecked((short)0xFF00));
            Vector256<short> texture = (Vector256.LoadUnsafe(ref ranks, at) >>> 2).AsInt16() - Vector256.Create((short)8192);
            texture = Avx2.MultiplyHighRoundScale(texture, Entry(strengths, entry));
            Vector256<short> value = Avx2.AddSaturate(Avx2.AddSaturate(tone, Vector256.LoadUnsafe(ref kept, at + 16)), ahead);
            Vector256<short> error = Dots256(tone, value, texture, full, column);
            Vector256<short> forward = Avx2.MultiplyHighRoundScale(error, Entry(aheads, entry));
            Vector256<short> back = Avx2.MultiplyHighRoundScale(error, Entry(behinds, entry));
            Vector256<short> down = Avx2.MultiplyHighRoundScale(error, Entry(belows, entry));
            (below + back).StoreUnsafe(ref kept, (nuint)((column + 1 - step) * 16));
            below = next + down;
            next = error - forward - back - down;
            ahead = forward;
        }

        below.StoreUnsafe(ref kept, (nuint)((column + 1 - step) * 16));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Vector256<short> Dots256(Vector256<short> tone, Vector256<short> value, Vector256<short> texture, Vector256<short> full, int column)
    {
        // Bare never exceeds its threshold, full always does. The sign of a difference is at hand sooner than the result of a comparison.
        Vector256<short> solid = Vector256.Equals(tone, full), bare = Vector256.Equals(tone, Vector256<short>.Zero), volume = default;
        Vector256<short> never = bare & Vector256.Create(short.MaxValue), always = solid & Vector256.Create(short.MinValue), open = ~(bare | solid);
        uint low = 0, high = 0;
        for (int drop = 0; drop < levels.Sizes.Length; drop++)
        {
            // One drop takes the whole texture: a factor of 32 767 of 32 768 would leave values of this size as they are.
            Vector256<short> part = levels.Sizes.Length == 1 ? texture : Avx2.MultiplyHighRoundScale(texture, Vector256.Create(levels.Reaches[drop]));
            Vector256<short> threshold = ((Vector256.Create(levels.Middles[drop]) + part) & open) | never | always;
            Vector256<short> set = Avx2.SubtractSaturate(threshold, value) >> 15;
            volume += set & Vector256.Create(levels.Sizes[drop]);
            uint bits = DotPacking.Bits(set, Vector256<short>.Zero);
            low ^= bits;
            high = drop == 1 ? bits : high;
        }

        (Low[column], High[column]) = (low, high);
        return (value - volume) & open;
    }

    // Entry of a table of bytes as a factor of 32 768; the upper byte of each place asks for 0.
    private static Vector512<short> Entry(Vector512<byte> bytes, Vector512<short> entry) => Avx512BW.Shuffle(bytes, entry.AsByte()).AsInt16() << 7;

    private static Vector256<short> Entry(Vector256<byte> bytes, Vector256<short> entry) => Avx2.Shuffle(bytes, entry.AsByte()).AsInt16() << 7;

    private static Vector512<byte> Wide(byte[] bytes) => Vector512.Create(Half(bytes), Half(bytes));

    private static Vector256<byte> Half(byte[] bytes) => Vector256.Create(Vector128.Create(bytes), Vector128.Create(bytes));
}
