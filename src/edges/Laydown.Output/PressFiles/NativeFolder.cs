using System.Runtime.InteropServices;
using System.Text;

namespace Laydown.Output.PressFiles;

/// <summary>What the runtime does not offer for folders on Linux: flushing one to disk, and swapping two in one step.</summary>
internal static class NativeFolder
{
    private const int CurrentFolder = -100;
    private const uint Exchange = 2;
    private const int ReadOnlyFolder = 0x10000 | 0x80000;

    /// <summary>Waits until the folder's entries are on disk.</summary>
    /// <exception cref="IOException">The folder cannot be opened or flushed.</exception>
    public static void Flush(string folder)
    {
        int handle = Open(Bytes(folder), ReadOnlyFolder);
        if (handle < 0)
            throw Failure("opening", folder);
        int result = FSync(handle);
        int error = Marshal.GetLastPInvokeError();
        _ = Close(handle);
        if (result != 0)
            throw new IOException(Invariant($"flushing {folder}: error {error}"), error);
    }

    /// <summary>Swaps two folders of one file system in one step, so that each name is always a whole folder.</summary>
    /// <exception cref="IOException">The file system cannot.</exception>
    public static void Swap(string one, string other)
    {
        if (RenameAt2(CurrentFolder, Bytes(one), CurrentFolder, Bytes(other), Exchange) != 0)
            throw Failure("swapping", one);
    }

    /// <summary>Gives a file a second name on the same file system; copies it where the file system cannot.</summary>
    /// <exception cref="IOException">Neither can be done.</exception>
    public static void Link(string file, string name)
    {
        if (LinkFile(Bytes(file), Bytes(name)) != 0)
            File.Copy(file, name, overwrite: true);
    }

    private static IOException Failure(string what, string path)
    {
        int error = Marshal.GetLastPInvokeError();
        return new(Invariant($"{what} {path}: error {error}"), error);
    }

    private static byte[] Bytes(string path) => Encoding.UTF8.GetBytes(path + "\0");

    [DllImport("libc", EntryPoint = "open", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Open(byte[] path, int flags);

    [DllImport("libc", EntryPoint = "link", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int LinkFile(byte[] file, byte[] name);

    [DllImport("libc", EntryPoint = "fsync", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int FSync(int handle);

    [DllImport("libc", EntryPoint = "close", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Close(int handle);

    [DllImport("libc", EntryPoint = "renameat2", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int RenameAt2(int oldFolder, byte[] oldPath, int newFolder, byte[] newPath, uint flags);
}
