using System.Security.Cryptography;
using System.Text.Json;
using Laydown.Shop.Run;

namespace Laydown.Output.PressFiles;

/// <summary>The list of a run's files with their SHA-256.</summary>
/// <remarks>Files are read back to be hashed: what is listed is what a reader will get, and the TIFF library goes back in its files while it writes.</remarks>
internal static class Manifest
{
    /// <summary>How manifests are laid out.</summary>
    public static JsonWriterOptions Layout { get; } = new() { Indented = true, NewLine = "\n" };

    /// <summary>Hashes the files and writes <c>manifest.json</c> beside them.</summary>
    public static IReadOnlyList<ManifestEntry> Write(
        string runId,
        string layoutMark,
        ContoneResolution resolution,
        DateTimeOffset made,
        string folder,
        IReadOnlyList<(string Name, string What)> files,
        CancellationToken cancellation)
    {
        ManifestEntry[] entries = new ManifestEntry[files.Count];
        AllCores.Run(
            files.Count,
            () => 0,
            (number, _) =>
            {
                (string name, string what) = files[number];
                using FileStream stream = File.OpenRead(Path.Combine(folder, name));
                entries[number] = new(name, what, stream.Length, Convert.ToHexStringLower(SHA256.HashData(stream)));
            },
            cancellation);

        using FileStream target = File.Create(Path.Combine(folder, "manifest.json"));
        using Utf8JsonWriter json = new(target, Layout);
        json.WriteStartObject();
        json.WriteString("schema", "laydown/manifest");
        json.WriteNumber("version", 1);
        json.WriteString("runId", runId);
        json.WriteString("layout", layoutMark);
        json.WriteString("made", made.ToUniversalTime());
        json.WriteNumber("contonePpi", resolution.Ppi);
        json.WriteString("contonePpiBecause", resolution.Because);
        json.WriteStartArray("files");
        foreach (ManifestEntry entry in entries)
            WriteEntry(json, entry);
        json.WriteEndArray();
        json.WriteEndObject();
        return entries;
    }

    private static void WriteEntry(Utf8JsonWriter json, ManifestEntry entry)
    {
        json.WriteStartObject();
        json.WriteString("name", entry.Name);
        json.WriteString("what", entry.What);
        json.WriteNumber("bytes", entry.Bytes);
        json.WriteString("sha256", entry.Sha256);
        json.WriteEndObject();
    }
}
