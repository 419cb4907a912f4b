using System.Text;
using Laydown.Colour.Readings;
using Laydown.Formats.Patches;

namespace Laydown.Formats.Cgats;

/// <summary>Writes readings as CGATS.17 text [CGATS17]: UTF-8, lines ending in CR LF, tabs between the values.</summary>
/// <remarks>Inks in percent, Lab, and the spectrum as factors where every patch has one in the same bands. Numbers read back the same.</remarks>
public static class CgatsWriter
{
    private static readonly string[] Process = ["Cyan", "Magenta", "Yellow", "Black"];

    /// <summary>Writes a set; the stream stays open.</summary>
    /// <exception cref="ArgumentException">The set has no patch.</exception>
    public static void Write(ReadingSet set, Stream stream)
    {
        if (set.Patches.Count == 0)
            throw new ArgumentException("Readings: found no patch; wanted at least one.", nameof(set));

        using StreamWriter text = new(stream, new UTF8Encoding(false), leaveOpen: true) { NewLine = "\r\n" };
        text.WriteLine("CGATS.17");
        WriteHead(set, text);
        string[] fields = [.. Fields(set)];
        text.WriteLine(Invariant($"NUMBER_OF_FIELDS\t{fields.Length}"));
        text.WriteLine("BEGIN_DATA_FORMAT");
        text.WriteLine(string.Join('\t', fields.Select(f => f.Any(char.IsWhiteSpace) ? Quoted(f) : f)));
        text.WriteLine("END_DATA_FORMAT");
        text.WriteLine(Invariant($"NUMBER_OF_SETS\t{set.Patches.Count}"));
        text.WriteLine("BEGIN_DATA");
        bool behind = set.Patches.Any(p => p.Behind != Behind.Unsaid);
        foreach (Patch patch in set.Patches)
            text.WriteLine(string.Join('\t', Values(patch, set.IsSpectral, behind)));
        text.WriteLine("END_DATA");
    }

    private static void WriteHead(ReadingSet set, StreamWriter text)
    {
        (string Keyword, string Value)[] head =
        [
            ("DESCRIPTOR", set.Name), ("INSTRUMENTATION", set.Measured.Instrument), ("MEASUREMENT_CONDITION", set.Measured.Condition),
            ("SAMPLE_BACKING", set.Measured.Backing), ("CREATED", set.Measured.Created), ("PRINT_CONDITIONS", set.Measured.Statement),
        ];
        text.WriteLine("KEYWORD\t\"MEASUREMENT_CONDITION\"");
        foreach ((string keyword, string value) in head.Where(h => h.Value.Length > 0))
            text.WriteLine(Invariant($"{keyword}\t{Quoted(value)}"));
    }

    // Process inks by their letters, any other ink by its own name.
    private static IEnumerable<string> Fields(ReadingSet set)
    {
        yield return "SAMPLE_ID";
        foreach (string ink in set.InkNames)
            yield return Array.IndexOf(Process, ink) is var at and >= 0 ? "CMYK_" + "CMYK"[at] : ink;
        if (set.Patches.Any(p => p.Behind != Behind.Unsaid))
            yield return "SAMPLE_BACKING";
        if (set.IsSpectral)
        {
            Spectrum first = set.Patches[0].Spectrum!;
            for (int band = 0; band < first.Values.Count; band++)
                yield return Invariant($"SPECTRAL_NM{first.FirstNm + (first.StepNm * band)}");
        }

        foreach (string lab in (string[])["LAB_L", "LAB_A", "LAB_B"])
            yield return lab;
    }

    private static IEnumerable<string> Values(Patch patch, bool spectral, bool behind)
    {
        yield return Quoted(patch.Id);
        foreach (double ink in patch.Inks)
            yield return FileNumber.Write(ink * 100);
        if (behind)
            yield return Quoted(BehindWords.Word(patch.Behind));
        foreach (double value in spectral ? patch.Spectrum!.Values : [])
            yield return FileNumber.Write(value);
        foreach (double value in (double[])[patch.Lab.L, patch.Lab.A, patch.Lab.B])
            yield return FileNumber.Write(value);
    }

    // The format has no sign for a quote inside quotes, and a line ends a value.
    private static string Quoted(string text) => '"' + text.Replace('"', '\'').ReplaceLineEndings(" ") + '"';
}
