using System.Runtime.InteropServices;
using Laydown.Intake.Artwork;
using Microsoft.Win32.SafeHandles;

namespace Laydown.Intake.Layers;

/// <summary>The raw file of one picture of a pair in the making: rows go in as they come, what the picture lacks is mirrored or left blank.</summary>
/// <remarks>Not finished with <see cref="Keep"/>, the file is removed when disposed.</remarks>
internal sealed class LabRaw : IDisposable
{
    private const int Bands = 3;

    private readonly SafeFileHandle handle;
    private readonly PixelFrame frame;
    private readonly ushort[]? blank;
    private readonly ushort[] line;
    private bool kept;

    /// <summary>Makes the file at its full length, so that a full disk shows at once.</summary>
    /// <param name="path">Where; must not exist.</param>
    /// <param name="frame">All pixels and those that are filled; none of it outside.</param>
    /// <param name="blank">L*, a*, b* as codes for what is not filled; null to mirror it.</param>
    public LabRaw(string path, PixelFrame frame, ushort[]? blank)
    {
        FullPath = path;
        this.frame = frame;
        this.blank = blank;
        line = new ushort[frame.Width * Bands];
        handle = File.OpenHandle(
            path, FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None, FileOptions.None, (long)frame.Width * frame.Height * Bands * sizeof(ushort));
    }

    /// <summary>Full path of the file.</summary>
    public string FullPath { get; }

    /// <summary>L*, a*, b* as codes of the file.</summary>
    public static void Encode(ReadOnlySpan<float> lab, Span<ushort> codes)
    {
        for (int at = 0; at < lab.Length; at += Bands)
        {
            codes[at] = Code(lab[at] * 655.35f);
            codes[at + 1] = Code((lab[at + 1] + 128) * 257);
            codes[at + 2] = Code((lab[at + 2] + 128) * 257);
        }
    }

    /// <summary>Takes one filled row.</summary>
    /// <param name="row">Row of the filled part, from 0.</param>
    /// <param name="filled">L*, a*, b* of its pixels.</param>
    public void Write(int row, ReadOnlySpan<float> filled)
    {
        Encode(filled, line.AsSpan(frame.Left * Bands, frame.FilledWidth * Bands));
        for (int x = 0; x < frame.Width; x++)
        {
            if (x == frame.Left)
                x = frame.Right;
            if (x >= frame.Width)
                break;
            ReadOnlySpan<ushort> from = blank ?? line.AsSpan((frame.Left + PixelFrame.Mirrored(x, frame.Left, frame.Right)) * Bands, Bands);
            from[..Bands].CopyTo(line.AsSpan(x * Bands));
        }

        Put(frame.Top + row);
    }

    /// <summary>Fills the rows above and below, and keeps the file.</summary>
    public void Keep()
    {
        for (int y = 0; y < frame.Height; y++)
        {
            if (y == frame.Top)
                y = frame.Bottom;
            if (y >= frame.Height)
                break;
            if (blank is null)
                Take(frame.Top + PixelFrame.Mirrored(y, frame.Top, frame.Bottom));
            else
                for (int x = 0; x < line.Length; x++)
                    line[x] = blank[x % Bands];
            Put(y);
        }

        kept = true;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        handle.Dispose();
        if (!kept)
            File.Delete(FullPath);
    }

    private static ushort Code(float value) => (ushort)Math.Clamp(MathF.Round(value), 0, 65535);

    private void Put(int row) => RandomAccess.Write(handle, MemoryMarshal.AsBytes(line.AsSpan()), (long)row * line.Length * sizeof(ushort));

    private void Take(int row)
    {
        Span<byte> bytes = MemoryMarshal.AsBytes(line.AsSpan());
        if (RandomAccess.Read(handle, bytes, (long)row * bytes.Length) != bytes.Length)
            throw new IOException("a row of the scratch file could not be read back");
    }
}
