namespace Laydown.Demo;

/// <summary>Puts files in place whole: written beside, then renamed.</summary>
internal static class DemoFiles
{
    /// <summary>Writes the file at <paramref name="path"/>, making its folder; leaves nothing half-written behind.</summary>
    public static void Write(string path, Action<Stream> write)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        string beside = path + ".part";
        try
        {
            using (FileStream stream = new(beside, FileMode.Create, FileAccess.ReadWrite, FileShare.None))
                write(stream);
            File.Move(beside, path, overwrite: true);
        }
        finally
        {
            File.Delete(beside);
        }
    }

    /// <summary>A file that lies in this assembly: a font, a profile.</summary>
    public static byte[] Resource(string name)
    {
        using Stream stream = typeof(DemoFiles).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException(Invariant($"{name} is not part of the demo."));
        using MemoryStream all = new();
        stream.CopyTo(all);
        return all.ToArray();
    }
}
