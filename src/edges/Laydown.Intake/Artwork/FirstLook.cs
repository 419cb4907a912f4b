using Laydown.Artwork.Pages;
using Laydown.Formats.Images;
using Laydown.Measures;

namespace Laydown.Intake.Artwork;

/// <summary>The checks that every file passes before anything of it is opened: there, not empty, not too long, and what its name says.</summary>
internal static class FirstLook
{
    /// <summary>The format of the file, or why it cannot be taken.</summary>
    public static Reading<ArtworkKind> At(string path, IntakeLimits limits)
    {
        string name = Path.GetFileName(path);
        var file = new FileInfo(path);
        if (!file.Exists)
            return Refused(name, "file", "no such file", "a file in the order's folder");
        if (file.Length == 0)
            return Refused(name, "length", "0 bytes", "a file with something in it");
        if (file.Length > limits.Bytes)
            return Refused(name, "length", Invariant($"{file.Length / 1e6:0.#} MB"), Invariant($"at most {limits.Bytes / 1e6:0.#} MB"));

        byte[] start = new byte[Math.Min(FirstBytes.Length, file.Length)];
        using (var stream = file.OpenRead())
            stream.ReadExactly(start);

        if (FirstBytes.Kind(start) is not { } kind)
            return Refused(name, "first bytes", "none of the formats taken", "PDF, TIFF, PNG, JPEG or SVG");
        return FirstBytes.Promised(name) == kind
            ? Reading.Of(kind)
            : Refused(name, "file name", Invariant($"'{Path.GetExtension(name)}' on a file that is {Word(kind)} inside"), Invariant($"a name that says {Word(kind)}, or the right file"));
    }

    /// <summary>The format as people write it.</summary>
    public static string Word(ArtworkKind kind) => kind.ToString().ToUpperInvariant();

    private static Reading<ArtworkKind> Refused(string file, string field, string found, string wanted) =>
        Reading.Refused<ArtworkKind>(new InputFault(file, null, field, found, wanted));
}
