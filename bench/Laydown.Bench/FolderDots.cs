using System.Runtime.InteropServices;
using System.Security.Cryptography;
using Laydown.Raster.Sheets;
using Microsoft.Win32.SafeHandles;

namespace Laydown.Bench;

/// <summary>Writes dots to one raw file an ink, without head or journal: what the disk alone costs.</summary>
internal sealed class FolderDots : IDotSink, IDisposable
{
    private readonly SafeFileHandle[] files;
    private readonly int bandRows;
    private readonly ulong[] sums;

    /// <summary>Makes the files.</summary>
    public FolderDots(string folder, string name, SheetEngine engine, SheetJob job)
    {
        bandRows = engine.BandRows;
        sums = new ulong[engine.Bands];
        long bytes = (long)job.Rows * (((job.Columns * job.Screen.BitsPerDot) + 7) / 8);
        files = [.. Enumerable.Range(0, job.Screen.Inks).Select(i => File.OpenHandle(
            Path.Combine(folder, Invariant($"{name}-{i}.raw")), FileMode.Create, FileAccess.ReadWrite, FileShare.None, FileOptions.None, bytes))];
    }

    /// <summary>Hash over the dots, whichever order the bands came in.</summary>
    public string Checksum => Convert.ToHexStringLower(SHA256.HashData(MemoryMarshal.AsBytes<ulong>(sums)))[..16];

    /// <inheritdoc/>
    public bool Has(int band) => false;

    /// <inheritdoc/>
    public void Take(DotBand band)
    {
        ulong sum = 0;
        for (int ink = 0; ink < files.Length; ink++)
        {
            ReadOnlySpan<byte> rows = band.Dots.Plane(ink)[..(band.Rows * band.Dots.Stride)];
            RandomAccess.Write(files[ink], rows, (long)band.Number * bandRows * band.Dots.Stride);
            sum = Mixed(sum, rows);
        }

        sums[band.Number] = sum;
    }

    /// <summary>Brings all to the disk.</summary>
    public void Flush()
    {
        foreach (SafeFileHandle file in files)
            RandomAccess.FlushToDisk(file);
    }

    // Quick rather than good: it must not weigh on what is measured.
    private static ulong Mixed(ulong sum, ReadOnlySpan<byte> rows)
    {
        foreach (ulong word in MemoryMarshal.Cast<byte, ulong>(rows))
            sum = (System.Numerics.BitOperations.RotateLeft(sum, 5) ^ word) * 0x9E3779B97F4A7C15;
        return sum;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (SafeFileHandle file in files)
            file.Dispose();
    }
}
