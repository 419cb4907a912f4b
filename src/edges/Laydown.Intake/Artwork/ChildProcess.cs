using System.ComponentModel;
using System.Diagnostics;
using System.Text;

namespace Laydown.Intake.Artwork;

/// <summary>Runs one outside program: arguments as a list, limits of time and memory, nothing on its input, its words kept up to a limit.</summary>
/// <remarks>
/// Where there is a shell it stands between: it sets the limit of memory, and waits on a pipe that closes when this process ends in whatever way, so that a
/// killed parent leaves no child behind. It is handed program and arguments as they are and interprets none of them.
/// </remarks>
public static class ChildProcess
{
    private const string Shell = "/bin/sh";
    private const int NoSuchProgram = 127;
    private const string Guard = """
        exec 3<&0 </dev/null
        [ "$0" = 0 ] || ulimit -v "$0"
        "$@" 3<&- & child=$!
        (read -r word <&3; kill -9 "$child") >/dev/null 2>&1 & watch=$!
        wait "$child"; code=$?
        kill "$watch"
        exit "$code"
        """;

    /// <summary>Most characters kept of each stream; the rest is read and thrown away so that the child never blocks.</summary>
    public const int MaxWords = 64 * 1024;

    /// <summary>Runs a program to its end. Cancellation ends it with all its children.</summary>
    /// <param name="program">A name looked up on the path, or a full path.</param>
    /// <param name="arguments">Each argument as it is.</param>
    /// <param name="folder">Folder it works in; must exist.</param>
    /// <param name="limit">Longest time.</param>
    /// <param name="mostBytes">Most memory it may ask for, bytes of address space; 0 = no limit. Kept where there is a POSIX shell.</param>
    /// <param name="cancellation">Ends it before its time.</param>
    /// <exception cref="OperationCanceledException">Cancelled; the child is gone by then.</exception>
    public static async Task<ChildResult> RunAsync(
        string program, IReadOnlyList<string> arguments, string folder, TimeSpan limit, long mostBytes, CancellationToken cancellation)
    {
        using var child = new Process { StartInfo = Start(program, arguments, folder, mostBytes) };
        try
        {
            child.Start();
        }
        catch (Win32Exception)
        {
            return new(ChildEnding.Missing, -1, "", "");
        }

        // The input stays open, and empty, as long as this process lives.
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
        if (ending == ChildEnding.Ended && child.ExitCode == NoSuchProgram && File.Exists(Shell))
            ending = ChildEnding.Missing;
        return new(ending, ending == ChildEnding.Ended ? child.ExitCode : -1, await output, await errors);
    }

    private static ProcessStartInfo Start(string program, IReadOnlyList<string> arguments, string folder, long mostBytes)
    {
        bool guarded = File.Exists(Shell);
        var start = new ProcessStartInfo(guarded ? Shell : program)
        {
            WorkingDirectory = folder,
            UseShellExecute = false,
            CreateNoWindow = true,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        if (guarded)
            arguments = ["-c", Guard, Invariant($"{mostBytes / 1024}"), program, .. arguments];
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
