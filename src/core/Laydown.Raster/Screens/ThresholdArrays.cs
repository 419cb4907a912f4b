using System.Buffers.Binary;

namespace Laydown.Raster.Screens;

/// <summary>The arrays that come with the program, made by <see cref="VoidAndCluster"/> and kept as data.</summary>
public static class ThresholdArrays
{
    /// <summary>How many there are; a layer with more inks begins again with the first, shifted by half a side.</summary>
    public const int Count = 8;

    private const int FirstSeed = 1;
    private const int Dark = 3;
    private const double CompanionWeight = 0.1;

    private static readonly Lazy<ThresholdArray>[] Kept =
        [.. Enumerable.Range(0, Count).Select(number => new Lazy<ThresholdArray>(() => Read(number)))];

    /// <summary>One of the kept arrays.</summary>
    /// <param name="number">From 0; the first for the darkest ink.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number is below 0.</exception>
    public static ThresholdArray Of(int number)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(number);
        ThresholdArray kept = Kept[number % Count].Value;
        return number < Count ? kept : kept.Shifted(ThresholdArray.Side / 2, ThresholdArray.Side / 2);
    }

    /// <summary>Makes one of them anew, the same one.</summary>
    /// <param name="number">0 to <see cref="Count"/> − 1.</param>
    /// <param name="before">Those of lower numbers: the first three are minded, as their inks are the darkest.</param>
    /// <param name="cancellation">Looked at from time to time.</param>
    public static ThresholdArray Make(int number, IReadOnlyList<ThresholdArray> before, CancellationToken cancellation) =>
        VoidAndCluster.Make(FirstSeed + number, [.. before.Take(Math.Min(number, Dark))], CompanionWeight, cancellation);

    /// <summary>Ranks of an array as bytes, low byte first: how they are kept.</summary>
    public static byte[] Bytes(ThresholdArray array)
    {
        byte[] bytes = new byte[array.Ranks.Length * 2];
        for (int place = 0; place < array.Ranks.Length; place++)
            BinaryPrimitives.WriteUInt16LittleEndian(bytes.AsSpan(place * 2), array.Ranks[place]);
        return bytes;
    }

    private static ThresholdArray Read(int number)
    {
        const string name = "threshold-arrays.bin";
        using Stream stream = typeof(ThresholdArrays).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException(name + ": not in the assembly.");
        byte[] bytes = new byte[ThresholdArray.Side * ThresholdArray.Side * 2];
        stream.Position = (long)number * bytes.Length;
        stream.ReadExactly(bytes);
        ushort[] ranks = new ushort[ThresholdArray.Side * ThresholdArray.Side];
        for (int place = 0; place < ranks.Length; place++)
            ranks[place] = BinaryPrimitives.ReadUInt16LittleEndian(bytes.AsSpan(place * 2));
        return new(ranks);
    }
}
