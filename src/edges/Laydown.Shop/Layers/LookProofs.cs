using Laydown.Measures;
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

    /// <summary>Longest side of a proof in a profile of its own, pixels: each pixel goes the long way through CIELAB.</summary>
    private const int ProfiledSidePx = 1000;

    /// <summary>Writes both into the draft.</summary>
    /// <param name="record">The look.</param>
    /// <param name="optics">Its light.</param>
    /// <param name="draft">Where its planes lie.</param>
    /// <param name="pictures">Writes pictures.</param>
    /// <param name="profilePath">Full path of an RGB profile; null for sRGB.</param>
    /// <param name="cancellation">Looked at before each row.</param>
    /// <returns>Proofs written, or why the profile cannot be taken.</returns>
    public static async Task<Reading<int>> WriteAsync(
        LookRecord record, LookOptics optics, LookDraft draft, ILookPictures pictures, string? profilePath, CancellationToken cancellation)
    {
        (int width, int height) = Size(record.WidthPx, record.HeightPx, profilePath is null ? SidePx : ProfiledSidePx);
        using LookPlanes planes = new(record, draft.FolderPath);
        byte[] small = planes.Reduced(width, height, cancellation);
        byte[]? profile = null;
        if (profilePath is not null)
        {
            if (!System.IO.File.Exists(profilePath))
                return Reading.Refused<int>(new InputFault(Path.GetFileName(profilePath), null, "ICC profile", "no such file", "a profile for RGB"));
            profile = await System.IO.File.ReadAllBytesAsync(profilePath, cancellation);
        }

        foreach ((string name, StackLook look) in new[] { (DayFile, optics.Day()), (NightFile, optics.Night()) })
        {
            Reading<byte[]> png = profile is null
                ? Reading.Of(pictures.Png(Picture(small, planes.Count, width, height, look, cancellation)))
                : pictures.PngIn(width, Colours(small, planes.Count, width, height, look, cancellation), Path.GetFileName(profilePath!), profile);
            if (!png.IsTaken)
                return Reading.Refused<int>(png.Faults);
            await draft.WriteAsync(name, png.Value, cancellation);
        }

        return Reading.Of(2);
    }

    private static double[] Colours(byte[] planes, int count, int width, int height, StackLook look, CancellationToken cancellation)
    {
        double[] lab = new double[3 * width * height];
        Parallel.For(0, height, new ParallelOptions { CancellationToken = cancellation }, row =>
        {
            double[] spot = new double[count];
            for (int x = 0; x < width; x++)
            {
                for (int plane = 0; plane < count; plane++)
                    spot[plane] = planes[(((plane * height) + row) * width) + x] / 255.0;
                Laydown.Colour.Spaces.Lab seen = look.At(spot).Lab;
                int at = 3 * ((row * width) + x);
                (lab[at], lab[at + 1], lab[at + 2]) = (Math.Min(100, seen.L), seen.A, seen.B);
            }
        });
        return lab;
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
