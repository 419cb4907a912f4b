using Laydown.Measures;

namespace Laydown.Output.PressFiles;

/// <summary>Puts a failure of disk or file into words an operator can act on.</summary>
internal static class DiskFault
{
    // errno of "no space left" and "quota exceeded" on Linux, and the code the runtime gives when room cannot be set aside.
    private const int NoSpace = 28, QuotaExceeded = 122, DiskFull = unchecked((int)0x80070070);

    /// <summary>Whether an exception comes from outside and is told as a fault, not as a defect.</summary>
    public static bool IsFault(Exception e) => e is IOException or InvalidDataException or UnauthorizedAccessException;

    /// <summary>The fault, with the file that was being written.</summary>
    public static InputFault Of(Exception e, string file, string folder) => e.HResult is NoSpace or QuotaExceeded or DiskFull
        ? new(file, null, "disk", Invariant($"no space left in {Path.GetFileName(Path.TrimEndingDirectorySeparator(folder))} while writing"), "a disk with room for the run; free some and make it again")
        : new(file, null, e is InvalidDataException ? "scratch data" : "file", e.Message, "a file that can be written and read");
}
