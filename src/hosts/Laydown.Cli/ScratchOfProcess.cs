using System.Globalization;

namespace Laydown.Cli;

/// <summary>Temporary files of a process in a shop. Each process has a folder of its own, so that what a killed one left can be told.</summary>
internal static class ScratchOfProcess
{
    private const string Prefix = "process-";

    /// <summary>This process's folder below <paramref name="scratchFolder"/>; folders of processes that are gone are removed.</summary>
    public static string In(string scratchFolder)
    {
        string own = Path.Combine(scratchFolder, Invariant($"{Prefix}{Environment.ProcessId}"));
        Directory.CreateDirectory(own);
        foreach (string folder in Directory.EnumerateDirectories(scratchFolder, Prefix + "*").ToList())
        {
            string number = Path.GetFileName(folder)[Prefix.Length..];
            if (int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out int id) && !Directory.Exists(Invariant($"/proc/{id}")))
                Directory.Delete(folder, recursive: true);
        }

        return own;
    }
}
