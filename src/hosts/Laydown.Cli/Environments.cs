using Laydown.Measures;

namespace Laydown.Cli;

/// <summary>What the program needs from the machine.</summary>
internal static class Environments
{
    /// <summary>Whether Ghostscript can be started: a file <c>gs</c> on the path.</summary>
    public static bool HasGhostscript => (Environment.GetEnvironmentVariable("PATH") ?? "")
        .Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries)
        .Any(folder => File.Exists(Path.Combine(folder, "gs")));

    /// <summary>The exit code for work that was refused: 4 where a fault comes from a missing program, else 3.</summary>
    public static int CodeFor(IReadOnlyList<InputFault> faults) =>
        !HasGhostscript && faults.Any(IsOfGhostscript) ? ExitCodes.Missing : ExitCodes.Refused;

    private static bool IsOfGhostscript(InputFault fault) =>
        fault.ToString().Contains("ghostscript", StringComparison.OrdinalIgnoreCase);
}
