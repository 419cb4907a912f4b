using Laydown.Measures;
using Laydown.Raster.Tiles;
using Laydown.Shop.Artwork;

namespace Laydown.Intake.Artwork;

/// <summary>The raw file of plates: plate after plate, row after row from the top, one byte a pixel. Rows go in as they come; margins are mirrored.</summary>
/// <remarks>Holds two rows in memory. Not finished with <see cref="Keep"/>, the file is removed when disposed.</remarks>
internal sealed class PlateFile : IDisposable
{
    private readonly Microsoft.Win32.SafeHandles.SafeFileHandle handle;
    private readonly PixelFrame frame;
    private readonly byte[] line;
    private readonly int[] mirror;
    private bool kept;

    public PlateFile(string path, PixelFrame frame, int plates)
    {
        FullPath = path;
        this.frame = frame;
        line = new byte[frame.Width];
        mirror = [.. Enumerable.Range(0, frame.Width).Select(x => PixelFrame.Mirrored(x, frame.Left, frame.Right))];
        handle = File.OpenHandle(path, FileMode.CreateNew, FileAccess.Write, FileShare.None, FileOptions.None, (long)plates * frame.Width * frame.Height);
    }

    /// <summary>Copies plates, as they come, into a raw file of 8 bits a value.</summary>
    /// <returns>The page, once all of it was rendered without a fault.</returns>
    public static async Task<Reading<RenderedPage>> CopyAsync(OpenPlates plates, string path, CancellationToken cancellation)
    {
        using var file = new PlateFile(path, new PixelFrame(plates.Columns, plates.Rows, 0, 0, plates.Columns, plates.Rows), plates.Names.Count);
        try
        {
            await Task.Run(() => Copy(plates.Source, file, cancellation), cancellation);
        }
        catch (InvalidDataException) when (plates.Ended.IsFaulted || !plates.Ended.IsCompletedSuccessfully || plates.Ended.Result.Count > 0)
        {
            // Why is told better by how the rendering ended.
        }

        var faults = await plates.Ended;
        if (faults.Count > 0)
            return Reading.Refused<RenderedPage>(faults);
        file.Keep();
        return Reading.Of(new RenderedPage(plates.Columns, plates.Rows, plates.Names, path));
    }

    /// <summary>Full path of the file.</summary>
    public string FullPath { get; }

    /// <summary>Writes one filled row of a plate, and every margin row that mirrors it.</summary>
    /// <param name="plate">Plate from 0.</param>
    /// <param name="row">Row of the filled part, from 0 at the top.</param>
    /// <param name="filled">Its pixels, 0 = no ink.</param>
    public void Write(int plate, int row, ReadOnlySpan<byte> filled)
    {
        filled.CopyTo(line.AsSpan(frame.Left));
        for (int x = 0; x < frame.Left; x++)
            line[x] = filled[mirror[x]];
        for (int x = frame.Right; x < frame.Width; x++)
            line[x] = filled[mirror[x]];

        Put(plate, frame.Top + row);
        for (int y = 0; y < frame.Top; y++)
            PutMirror(plate, row, y);
        for (int y = frame.Bottom; y < frame.Height; y++)
            PutMirror(plate, row, y);
    }

    /// <summary>Keeps the file.</summary>
    public void Keep() => kept = true;

    /// <inheritdoc/>
    public void Dispose()
    {
        handle.Dispose();
        if (!kept && File.Exists(FullPath))
            File.Delete(FullPath);
    }

    private static void Copy(ITileSource source, PlateFile file, CancellationToken cancellation)
    {
        ushort[] values = new ushort[source.Columns];
        byte[] bytes = new byte[source.Columns];
        for (int row = 0; row < source.Rows; row++)
        {
            cancellation.ThrowIfCancellationRequested();
            for (int ink = 0; ink < source.Inks; ink++)
            {
                source.ReadRow(ink, row, 0, values);
                PlateBytes.Narrow(values, bytes);
                file.Write(ink, row, bytes);
            }
        }
    }

    private void PutMirror(int plate, int row, int y)
    {
        if (PixelFrame.Mirrored(y, frame.Top, frame.Bottom) == row)
            Put(plate, y);
    }

    private void Put(int plate, int y) => Positional.Put(handle, line, (((long)plate * frame.Height) + y) * frame.Width);
}
