using Laydown.Optics.Looks;
using Laydown.Shop.Colour;

namespace Laydown.Shop.Layers;

/// <summary>Draws the proofs of a look from its planes: by day and with the lamp on, as the viewer sees them.</summary>
internal static class LookProofs
{
    /// <summary>Name of the proof by day.</summary>
    public const string DayFile = "day.png";

    /// <summary>Name of the proof with the lamp on.</summary>
    public const string NightFile = "night.png";

    /// <summary>Longest side of a proof, pixels.</summary>
    public const int SidePx = 2000;

    /// <summary>Writes both into the draft.</summary>
    public static async Task WriteAsync(LookRecord record, LookOptics optics, LookDraft draft, ILookPictures pictures, CancellationToken cancellation)
    {
        (int width, int height) = Size(record.WidthPx, record.HeightPx, SidePx);
        using LookPlanes planes = new(record, draft.FolderPath);
        byte[] small = planes.Reduced(width, height, cancellation);
        foreach ((string name, StackLook look) in new[] { (DayFile, optics.Day()), (NightFile, optics.Night()) })
            await draft.WriteAsync(name, pictures.Png(Picture(small, planes.Count, width, height, look, cancellation)), cancellation);
    }

    /// <summary>Planes in memory as they look.</summary>
    /// <param name="planes">Planes × rows × columns.</param>
    /// <param name="count">Planes.</param>
    /// <param name="width">Columns.</param>
    /// <param name="height">Rows.</param>
    /// <param name="look">The look.</param>
    /// <param name="cancellation">Looked at before each row.</param>
    public static RgbPicture Picture(byte[] planes, int count, int width, int height, StackLook look, CancellationToken cancellation)
    {
        byte[] rgb = new byte[3 * width * height];
        Parallel.For(0, height, new ParallelOptions { CancellationToken = cancellation }, row =>
        {
            byte[] line = new byte[count * width];
            for (int plane = 0; plane < count; plane++)
                planes.AsSpan(((plane * height) + row) * width, width).CopyTo(line.AsSpan(plane * width));
            look.Row(line, width, rgb.AsSpan(3 * row * width, 3 * width));
        });
        return new(width, height, rgb);
    }

    /// <summary>A size with no side over the most, never enlarged.</summary>
    public static (int Width, int Height) Size(int width, int height, int mostPx)
    {
        double scale = Math.Min(1, mostPx / (double)Math.Max(width, height));
        return (Math.Clamp((int)Math.Round(width * scale), 1, width), Math.Clamp((int)Math.Round(height * scale), 1, height));
    }
}
