using System.ComponentModel;
using System.Diagnostics;
using System.Text;

namespace Laydown.Intake.Artwork;

/// <summary>Runs one outside program: arguments as a list, no shell, a time limit, nothing on its input, its words kept up to a limit.</summary>
public static class ChildProcess
{
    /// <summary>Most characters kept of each stream; the rest is read and thrown away so that the child never blocks.</summary>
    public const int MaxWords = 64 * 1024;

    /// <summary>Runs a program to its end. Cancellation ends it with all its children.</summary>
    /// <param name="program">A name looked up on the path, or a full path.</param>
    /// <param name="arguments">Each argument as it is.</param>
    /// <param name="folder">Folder it works in; must exist.</param>
    /// <param name="limit">Longest time.</param>
    /// <param name="cancellation">Ends it before its time.</param>
    /// <exception cref="OperationCanceledException">Cancelled; the child is gone by then.</exception>
    public static async Task<ChildResult> RunAsync(
        string program, IReadOnlyList<string> arguments, string folder, TimeSpan limit, CancellationToken cancellation)
    {
        using var child = new Process { StartInfo = Start(program, arguments, folder) };
        try
        {
            child.Start();
        }
        catch (Win32Exception)
        {
            return new(ChildEnding.Missing, -1, "", "");
        }

        child.StandardInput.Close();
        var output = ReadAsync(child.StandardOutput);
        var errors = ReadAsync(child.StandardError);
        using var clock = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        clock.CancelAfter(limit);
        var ending = ChildEnding.Ended;
        try
        {
            await child.WaitForExitAsync(clock.Token);
        }
        catch (OperationCanceledException)
        {
            child.Kill(entireProcessTree: true);
            await child.WaitForExitAsync(CancellationToken.None);
            ending = ChildEnding.OutOfTime;
        }

        cancellation.ThrowIfCancellationRequested();
        return new(ending, ending == ChildEnding.Ended ? child.ExitCode : -1, await output, await errors);
    }

    private static ProcessStartInfo Start(string program, IReadOnlyList<string> arguments, string folder)
    {
        var start = new ProcessStartInfo(program)
        {
            WorkingDirectory = folder,
            UseShellExecute = false,
            CreateNoWindow = true,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (string argument in arguments)
            start.ArgumentList.Add(argument);

        // Temporary files of the child stay in the folder that is removed afterwards.
        start.Environment["TMPDIR"] = folder;
        start.Environment["LC_ALL"] = "C";
        return start;
    }

    private static async Task<string> ReadAsync(StreamReader words)
    {
        var kept = new StringBuilder();
        char[] block = new char[4096];
        int read;
        while ((read = await words.ReadAsync(block)) > 0)
            kept.Append(block, 0, Math.Min(read, MaxWords - kept.Length));
        return kept.ToString();
    }
}
