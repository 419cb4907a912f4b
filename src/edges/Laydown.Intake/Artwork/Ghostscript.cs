using Laydown.Measures;

namespace Laydown.Intake.Artwork;

/// <summary>Runs Ghostscript on one page of a PDF in a limited child process, and turns whatever went wrong into a fault.</summary>
/// <param name="limits">Program and time limit.</param>
internal sealed class Ghostscript(IntakeLimits limits)
{
    /// <summary>Most named separations in one page; Ghostscript would silently turn more of them into process inks.</summary>
    public const int MaxSpots = 40;

    // The file system is closed to the page's programs; no more is printed than what went wrong.
    private static readonly string[] Always = ["-dSAFER", "-dBATCH", "-dNOPAUSE", "-dQUIET", "-dNOPROMPT"];

    /// <summary>Renders one page.</summary>
    /// <param name="pdfPath">Full path of the PDF.</param>
    /// <param name="page">Page from 1.</param>
    /// <param name="options">Device and its options.</param>
    /// <param name="before">PostScript run before the page, or null.</param>
    /// <param name="folder">Folder it works in.</param>
    /// <param name="cancellation">Ends it.</param>
    /// <returns>Faults; none when the page was rendered.</returns>
    public async Task<IReadOnlyList<InputFault>> RunAsync(
        string pdfPath, int page, IReadOnlyList<string> options, string? before, string folder, CancellationToken cancellation)
    {
        // The page is chosen by definitions, not by options: those put a filter of pages before the device, and with it Ghostscript 10.00 leaves
        // every named separation of a see-through page bare, without a word.
        string choice = Invariant($"/FirstPage {page} def /LastPage {page} def {before}");
        List<string> arguments = [.. Always, .. options, "-c", choice, "-f", Path.GetFullPath(pdfPath)];
        var result = await ChildProcess.RunAsync(limits.Ghostscript, arguments, folder, TimeSpan.FromSeconds(limits.ChildSeconds), limits.ChildBytes, cancellation);
        return Faults(Path.GetFileName(pdfPath), page, result);
    }

    private IReadOnlyList<InputFault> Faults(string file, int page, ChildResult result) => result switch
    {
        { Ending: ChildEnding.Missing } => [new(file, null, "Ghostscript", Invariant($"no program '{limits.Ghostscript}' on this machine"), "Ghostscript 10; on Debian: apt install ghostscript")],
        { Ending: ChildEnding.OutOfTime } => [new(file, page, "time to render", Invariant($"more than {limits.ChildSeconds} s"), Invariant($"at most {limits.ChildSeconds} s; simplify the page"))],
        { ExitCode: not 0 } => [new(file, page, "PDF content", Words(result), "a page that can be rendered")],
        _ when Complaint(result) is { } words => [new(file, page, "PDF content", words, "a page that renders without errors")],
        _ => [],
    };

    /// <summary>Errors end up on either stream, at exit code 0: a page with a part missing must not pass.</summary>
    private static string? Complaint(ChildResult result) =>
        result.Errors.Trim().Length > 0 || result.Output.Contains("Error", StringComparison.OrdinalIgnoreCase) ? Words(result) : null;

    private static string Words(ChildResult result)
    {
        string all = result.Errors + "\n" + result.Output;
        var lines = all.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(l => l.Trim('*', ' ')).Where(l => l.Length > 0);
        string words = string.Join("; ", lines.Take(3));
        return words.Length == 0 ? Invariant($"exit code {result.ExitCode}") : words.Length > 300 ? words[..300] : words;
    }
}
