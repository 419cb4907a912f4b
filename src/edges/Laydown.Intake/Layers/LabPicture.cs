using Laydown.Formats.Icc;
using Laydown.Formats.Images;
using Laydown.Measures;
using NetVips;

namespace Laydown.Intake.Layers;

/// <summary>Brings an image to CIELAB (D50) relative to its own white, and to size.</summary>
/// <remarks>
/// Relative colorimetric, black as it is. Made smaller in linear light, so that fine detail keeps its brightness; made larger in CIELAB, so that edges
/// overshoot evenly by eye. What is see-through lets white show by day and nothing at night.
/// </remarks>
internal static class LabPicture
{
    /// <summary>Why an image is none that can be taken, or null.</summary>
    public static InputFault? Fault(Image image, string file, int? page)
    {
        bool lab = image.Interpretation is Enums.Interpretation.Lab or Enums.Interpretation.Labs;
        if (!lab && image.Format is not (Enums.BandFormat.Uchar or Enums.BandFormat.Ushort))
            return new(file, page, "bits of a sample", Invariant($"{image.Format}"), "8 or 16 bits, whole numbers");
        int most = image.Interpretation == Enums.Interpretation.Cmyk ? 5 : 4;
        return image.Bands <= most && image.Interpretation != Enums.Interpretation.Multiband
            ? null
            : new(file, page, "channels", Invariant($"{image.Bands}"), "grey, RGB, CMYK or Lab, with one alpha at most");
    }

    /// <summary>The image in CIELAB, 3 bands of float; what was assumed is noted.</summary>
    /// <param name="source">Upright, alpha last where it has any.</param>
    /// <param name="cmykProfile">Profile for CMYK that carries none.</param>
    /// <param name="dark">Whether see-through parts are dark (night) or white (day).</param>
    /// <param name="file">File for notes.</param>
    /// <param name="notes">Told what was assumed.</param>
    public static Image Of(Image source, string cmykProfile, bool dark, string file, PictureNotes notes)
    {
        using Image opaque = Opaque(source, dark, notes);
        if (IsOneBit(source))
            notes.Warn("picture-one-bit", "it is black and white without shades and is taken as such.", "1 bit", "8 or 16 bits");
        if (opaque.Interpretation is Enums.Interpretation.Lab or Enums.Interpretation.Labs)
            return opaque.Colourspace(Enums.Interpretation.Lab);

        int colours = ImageFile.Colours(opaque);
        if (colours == 4)
            notes.Note("picture-cmyk", "it is in CMYK: its colours end where its own print did, and its black is no deeper than that.", "CMYK", "RGB with a profile");
        if (ImageFile.Profile(opaque) is { } profile && IsUsable(profile, colours, file, notes))
            return opaque.IccImport(pcs: Enums.PCS.Lab, intent: Enums.Intent.Relative, embedded: true);

        string assumed = colours == 4 ? "the profile of the print condition" : "sRGB";
        notes.Warn("picture-no-profile", Invariant($"it says nothing usable about its colours; they are taken as {assumed}."), "no profile", "an embedded ICC profile");
        using Image coloured = colours == 1
            ? opaque.Colourspace(opaque.Format == Enums.BandFormat.Ushort ? Enums.Interpretation.Rgb16 : Enums.Interpretation.Srgb)
            : opaque.Copy();
        return coloured.IccImport(
            pcs: Enums.PCS.Lab, intent: Enums.Intent.Relative, embedded: false, inputProfile: colours == 4 ? cmykProfile : "srgb");
    }

    /// <summary>An image in CIELAB at another size.</summary>
    public static Image Sized(Image lab, int width, int height)
    {
        if (lab.Width == width && lab.Height == height)
            return lab.Copy();
        double across = (double)width / lab.Width, down = (double)height / lab.Height;
        if (across >= 1 && down >= 1)
            return Exactly(lab.Resize(across, kernel: Enums.Kernel.Lanczos3, vscale: down), width, height);

        using Image light = lab.Colourspace(Enums.Interpretation.Xyz);
        using Image small = light.Resize(across, kernel: Enums.Kernel.Lanczos3, vscale: down);
        return Exactly(small.Colourspace(Enums.Interpretation.Lab), width, height);
    }

    // Rounding inside may leave a pixel too many or too few.
    private static Image Exactly(Image image, int width, int height) =>
        image.Width == width && image.Height == height
            ? image
            : image.Gravity(Enums.CompassDirection.Centre, width, height, extend: Enums.Extend.Copy);

    private static bool IsOneBit(Image image) => image.Contains("bits-per-sample") && (int)image.Get("bits-per-sample") == 1 && image.Bands == 1;

    private static Image Opaque(Image source, bool dark, PictureNotes notes)
    {
        if (!source.HasAlpha())
            return source.Copy();
        notes.Note("picture-alpha", dark ? "it is see-through in part; there it is dark." : "it is see-through in part; there it is white.", "alpha", "an opaque picture");
        double most = source.Format == Enums.BandFormat.Ushort ? 65535 : 255;
        double[] background = source.Interpretation == Enums.Interpretation.Cmyk
            ? [0, 0, 0, dark ? most : 0]
            : [.. Enumerable.Repeat(dark ? 0 : most, source.Bands - 1)];
        return source.Flatten(background: background, maxAlpha: most);
    }

    private static bool IsUsable(byte[] profile, int colours, string file, PictureNotes notes)
    {
        Reading<IccProfile> read = IccProfile.Read(file, profile);
        int wanted = read.IsTaken ? IccTransform.Channels(read.Value.Space) : 0;
        if (read.IsTaken && wanted == colours)
            return true;
        notes.Warn(
            "picture-bad-profile", "its profile cannot be used.",
            read.IsTaken ? Invariant($"a profile for {read.Value.Space} on {colours} channels") : read.Faults[0].ToString(), "a profile of the picture's own colour space");
        return false;
    }
}
