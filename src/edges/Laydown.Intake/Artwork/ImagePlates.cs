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
        using var inks = Inks(source, profilePath, frame);
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

    /// <summary>The inks of an image at the size of the filled part, 8 bits, alpha last where it has any.</summary>
    public static Image Inks(Image source, string profilePath, PixelFrame frame)
    {
        bool alpha = source.HasAlpha();
        if (!alpha)
            return source.Width > frame.FilledWidth ? Coloured(Scaled(source, frame), profilePath) : Scaled(Coloured(source, profilePath), frame);

        // Colour at see-through edges is weighted by alpha while scaling, so that what hides behind alpha does not bleed in.
        bool asIs = source.Width == frame.FilledWidth && source.Height == frame.FilledHeight;
        using var scaled = asIs ? source.Copy() : Scaled(source.Premultiply(), frame).Unpremultiply().Cast(source.Format);
        int colours = source.Bands - 1;
        using var opaque = scaled[colours];
        using var cover = (source.Format == Enums.BandFormat.Ushort ? opaque / 257.0 : opaque / 1.0).Rint().Cast(Enums.BandFormat.Uchar);
        using var inks = Coloured(scaled.ExtractBand(0, n: colours).Copy(interpretation: source.Interpretation), profilePath);
        using var covered = (inks * cover / 255.0).Rint().Cast(Enums.BandFormat.Uchar);
        return covered.Bandjoin(cover);
    }

    private static Image Coloured(Image image, string profilePath)
    {
        bool hasProfile = image.Contains("icc-profile-data");
        int colours = ImageFile.Colours(image);
        if (!hasProfile && colours == 4)
            return Eight(image.ExtractBand(0, n: 4));
        if (!hasProfile && colours == 1)
            return BlackInk(Eight(image[0]));

        // To Lab and from Lab as two transforms: one transform over both was up to 1.3 codes off Little CMS's own command line,
        // because it is resampled onto a grid; and 16 bits out, rounded here.
        bool isLab = image.Interpretation is Enums.Interpretation.Lab or Enums.Interpretation.Labs;
        using var lab = isLab ? image.Copy() : image.IccImport(
            pcs: Enums.PCS.Lab, intent: Enums.Intent.Relative, blackPointCompensation: true, embedded: true, inputProfile: "srgb");
        return Eight(lab.IccExport(outputProfile: profilePath, intent: Enums.Intent.Relative, blackPointCompensation: true, depth: 16));
    }

    private static Image BlackInk(Image grey)
    {
        using var none = grey * 0;
        using var black = grey.Invert();
        return none.Bandjoin(none, none, black).Cast(Enums.BandFormat.Uchar);
    }

    private static Image Eight(Image image) => image.Format switch
    {
        Enums.BandFormat.Uchar => image,
        Enums.BandFormat.Ushort => (image / 257.0).Rint().Cast(Enums.BandFormat.Uchar),
        _ => (image * 255.0).Rint().Cast(Enums.BandFormat.Uchar),
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
