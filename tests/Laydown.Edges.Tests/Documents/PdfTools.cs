using Xunit;
using System.Diagnostics;

namespace Laydown.Edges.Tests.Documents;

/// <summary>Runs the independent PDF programs; one that is missing fails the test.</summary>
internal static class PdfTools
{
    public static (int Code, string Out) Run(string program, params string[] arguments)
    {
        using Process process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string text = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, text + errors.Result);
    }

    /// <summary>Writes a file into a folder; where the variable LAYDOWN_KEEP names a folder, a copy stays there to be looked at.</summary>
    public static string Write(string folder, string name, byte[] bytes)
    {
        string path = Path.Combine(folder, name);
        File.WriteAllBytes(path, bytes);
        if (Environment.GetEnvironmentVariable("LAYDOWN_KEEP") is { Length: > 0 } keep)
            File.WriteAllBytes(Path.Combine(keep, name), bytes);
        return path;
    }

    /// <summary>All words of a PDF, runs of white space made one blank.</summary>
    public static string Text(string path)
    {
        (int code, string text) = Run("pdftotext", "-layout", path, "-");
        Assert.Equal(0, code);
        return string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
    }
}
