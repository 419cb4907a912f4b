using System.Runtime.InteropServices;
using Microsoft.Win32.SafeHandles;

namespace Laydown.Bench;

/// <summary>Lets the system forget what it holds of files in memory, so that they are read from the disk.</summary>
internal static partial class ColdFiles
{
    private const int DontNeed = 4;

    /// <summary>Asks for it; files must have been flushed.</summary>
    public static void Forget(IEnumerable<string> paths)
    {
        foreach (string path in paths)
        {
            using SafeFileHandle file = File.OpenHandle(path);
            if (Advise(file.DangerousGetHandle().ToInt32(), 0, 0, DontNeed) != 0)
                throw new InvalidOperationException("posix_fadvise failed; wanted Linux.");
        }
    }

    [LibraryImport("libc", EntryPoint = "posix_fadvise")]
    private static partial int Advise(int file, long offset, long length, int advice);
}
