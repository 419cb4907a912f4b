using System.Runtime.InteropServices;
using Laydown.Formats.Images;
using NetVips;

namespace Laydown.Intake.Artwork;

/// <summary>Brings an image to the inks of a print condition by Little CMS, and to size, streaming row by row.</summary>
/// <remarks>
/// Relative colorimetric with black point compensation, as PDF pages are rendered. RGB without a profile is taken as sRGB, CMYK without a profile
/// goes through as it is, grey without a profile becomes black ink alone. Where the image carries alpha, the inks come already multiplied by it: bare
/// sheet shows through.
/// </remarks>
internal static class ImagePlates
{
    /// <summary>The process plates every page has, in their order.</summary>
    public static readonly IReadOnlyList<string> Process = ["Cyan", "Magenta", "Yellow", "Black"];

    /// <summary>Writes the plates.</summary>
    /// <param name="source">The image, upright, alpha last where it has any.</param>
    /// <param name="profilePath">CMYK output profile.</param>
    /// <param name="frame">Pixels wanted.</param>
    /// <param name="path">The raw file.</param>
    /// <param name="cancellation">Stops it.</param>
    /// <returns>Names of the plates.</returns>
    public static IReadOnlyList<string> Write(Image source, string profilePath, PixelFrame frame, string path, CancellationToken cancellation)
    {
        bool alpha = source.HasAlpha();
        using var inks = Inks(source, profilePath, frame, deep: false);
        inks.SetProgress(null, cancellation);
        int plates = alpha ? 5 : 4;
        using var file = new PlateFile(path, frame, plates);
        using var sink = Sink(file, frame, plates, 0);
        Pour(inks, sink, frame.FilledHeight, cancellation);
        file.Keep();
        return alpha ? [.. Process, "Alpha"] : Process;
    }

    /// <summary>Takes rows of interleaved pixels and puts each band on its plate.</summary>
    /// <param name="file">The raw file.</param>
    /// <param name="frame">Its pixels.</param>
    /// <param name="plates">Bands of a pixel.</param>
    /// <param name="firstRow">Row of the filled part where the rows start.</param>
    public static RowSink Sink(PlateFile file, PixelFrame frame, int plates, int firstRow)
    {
        byte[] plate = new byte[frame.FilledWidth];
        return new RowSink(frame.FilledWidth * plates, (row, pixels) =>
        {
            for (int p = 0; p < plates; p++)
            {
                for (int x = 0; x < plate.Length; x++)
                    plate[x] = pixels[(x * plates) + p];
                file.Write(p, firstRow + row, plate);
            }
        });
    }

    /// <summary>Takes rows of interleaved 16-bit pixels, puts each band on its plate and tells that the row is there.</summary>
    /// <param name="file">The scratch file.</param>
    /// <param name="firstRow">Row where the rows start.</param>
    /// <param name="arrived">Told each row.</param>
    public static RowSink Sink(DeepPlates file, int firstRow, Action<int> arrived)
    {
        ushort[] plate = new ushort[file.Columns];
        return new RowSink(2 * file.Columns * file.Inks, (row, pixels) =>
        {
            ReadOnlySpan<ushort> values = MemoryMarshal.Cast<byte, ushort>(pixels);
            for (int p = 0; p < file.Inks; p++)
            {
                for (int x = 0; x < plate.Length; x++)
                    plate[x] = values[(x * file.Inks) + p];
                file.Write(p, firstRow + row, plate);
            }

            arrived(firstRow + row + 1);
        });
    }

    /// <summary>Computes an image row by row into a sink; what went wrong inside the sink comes out as it was.</summary>
    public static void Pour(Image image, RowSink sink, int rows, CancellationToken cancellation)
    {
        try
        {
            image.WriteToStream(sink, ".raw");
        }
        catch (VipsException)
        {
            cancellation.ThrowIfCancellationRequested();
            if (sink.Failure is not null)
                throw new IOException(sink.Failure.Message, sink.Failure);
            throw;
        }

        if (sink.Failure is not null)
            throw new IOException(sink.Failure.Message, sink.Failure);
        if (sink.Rows != rows)
            throw new InvalidOperationException(Invariant($"{sink.Rows} rows came; wanted {rows}."));
    }

    /// <summary>The inks of an image at the size of the filled part, alpha last where it has any.</summary>
    /// <param name="source">The image, upright.</param>
    /// <param name="profilePath">CMYK output profile.</param>
    /// <param name="frame">Pixels wanted.</param>
    /// <param name="deep">Whether values have 16 bits; else 8.</param>
    public static Image Inks(Image source, string profilePath, PixelFrame frame, bool deep)
    {
        bool alpha = source.HasAlpha();
        if (!alpha)
            return source.Width > frame.FilledWidth ? Coloured(Scaled(source, frame), profilePath, deep) : Scaled(Coloured(source, profilePath, deep), frame);

        // Colour at see-through edges is weighted by alpha while scaling, so that what hides behind alpha does not bleed in.
        bool asIs = source.Width == frame.FilledWidth && source.Height == frame.FilledHeight;
        using var scaled = asIs ? source.Copy() : Scaled(source.Premultiply(), frame).Unpremultiply().Cast(source.Format);
        int colours = source.Bands - 1;
        using var opaque = scaled[colours];
        using var cover = Whole(opaque / (Full(source.Format) / Full(deep)), deep);
        using var inks = Coloured(scaled.ExtractBand(0, n: colours).Copy(interpretation: source.Interpretation), profilePath, deep);
        using var covered = Whole(inks * cover / Full(deep), deep);
        return covered.Bandjoin(cover);
    }

    private static double Full(bool deep) => deep ? ushort.MaxValue : byte.MaxValue;

    private static double Full(Enums.BandFormat format) => format == Enums.BandFormat.Ushort ? ushort.MaxValue : byte.MaxValue;

    private static Image Whole(Image values, bool deep) => values.Rint().Cast(deep ? Enums.BandFormat.Ushort : Enums.BandFormat.Uchar);

    private static Image Coloured(Image image, string profilePath, bool deep)
    {
        bool hasProfile = image.Contains("icc-profile-data");
        int colours = ImageFile.Colours(image);
        if (!hasProfile && colours == 4)
            return WithBits(image.ExtractBand(0, n: 4), deep);
        if (!hasProfile && colours == 1)
            return BlackInk(WithBits(image[0], deep));

        // To Lab and from Lab as two transforms: one transform over both was up to 1.3 codes off Little CMS's own command line,
        // because it is resampled onto a grid; and 16 bits out, rounded here.
        bool isLab = image.Interpretation is Enums.Interpretation.Lab or Enums.Interpretation.Labs;
        using var lab = isLab ? image.Copy() : image.IccImport(
            pcs: Enums.PCS.Lab, intent: Enums.Intent.Relative, blackPointCompensation: true, embedded: true, inputProfile: "srgb");
        return WithBits(lab.IccExport(outputProfile: profilePath, intent: Enums.Intent.Relative, blackPointCompensation: true, depth: 16), deep);
    }

    private static Image BlackInk(Image grey)
    {
        using var none = grey * 0;
        using var black = grey.Invert();
        return none.Bandjoin(none, none, black).Cast(grey.Format);
    }

    private static Image WithBits(Image image, bool deep) => image.Format switch
    {
        Enums.BandFormat.Uchar => deep ? Whole(image * 257, deep) : image,
        Enums.BandFormat.Ushort => deep ? image : Whole(image / 257.0, deep),
        _ => Whole(image * Full(deep), deep),
    };

    private static Image Scaled(Image image, PixelFrame frame)
    {
        if (image.Width == frame.FilledWidth && image.Height == frame.FilledHeight)
            return image;

        using var sized = image.Resize(
            (double)frame.FilledWidth / image.Width, kernel: Enums.Kernel.Lanczos3, vscale: (double)frame.FilledHeight / image.Height);

        // Rounding inside may leave a pixel too many or too few.
        return sized.Gravity(Enums.CompassDirection.Centre, frame.FilledWidth, frame.FilledHeight, extend: Enums.Extend.Copy);
    }
}
