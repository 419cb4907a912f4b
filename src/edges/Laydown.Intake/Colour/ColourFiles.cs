using Laydown.Colour.Inversion;
using Laydown.Colour.Readings;
using Laydown.Formats.Cgats;
using Laydown.Formats.Icc;
using Laydown.Formats.Json;
using Laydown.Formats.Readings;
using Laydown.Measures;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Shop.Colour;

namespace Laydown.Intake.Colour;

/// <summary>Files of colour work by their formats.</summary>
public sealed class ColourFiles : IColourFiles
{
    private const long MostBytes = 64 << 20;
    private const string Rights = "No rights reserved";

    /// <inheritdoc/>
    public Reading<ReadingSet> Readings(string path) => Bytes(path).Then(bytes => ReadingsFile.Read(Path.GetFileName(path), bytes));

    /// <inheritdoc/>
    public Reading<ReadingSet> Readings(string name, ReadOnlyMemory<byte> bytes) => ReadingsFile.Read(name, bytes);

    /// <inheritdoc/>
    public byte[] ReadingsText(ReadingSet readings)
    {
        using MemoryStream stream = new();
        CgatsWriter.Write(readings, stream);
        return stream.ToArray();
    }

    /// <inheritdoc/>
    public Reading<NumberTable> Numbers(string path, IReadOnlyList<string> wanted) =>
        Bytes(path).Then(bytes => NumbersCsv.Read(Path.GetFileName(path), bytes, wanted));

    /// <inheritdoc/>
    public Reading<PrintCondition> Condition(string path) => LaydownJson.ReadFile<PrintCondition>(path);

    /// <inheritdoc/>
    public byte[] ConditionText(PrintCondition condition) => LaydownJson.ToBytes(condition);

    /// <inheritdoc/>
    public Reading<InkSet> InkSet(string path) => LaydownJson.ReadFile<InkSet>(path);

    /// <inheritdoc/>
    public byte[] InkSetText(InkSet inks) => LaydownJson.ToBytes(inks);

    /// <inheritdoc/>
    public Reading<InkOptics> InkOptics(string path) => LaydownJson.ReadFile<InkOptics>(path).Then(optics =>
        InkOpticsFaults.Of(Path.GetFileName(path), optics) is { Count: > 0 } faults ? Reading.Refused<InkOptics>(faults) : Reading.Of(optics));

    /// <inheritdoc/>
    public byte[] InkOpticsText(InkOptics optics) => LaydownJson.ToBytes(optics);

    /// <inheritdoc/>
    public Reading<ColourLibrary> Library(string path)
    {
        if (!File.Exists(path))
            return Reading.Of(ColourLibrary.Empty);
        return LaydownJson.ReadFile<ColourLibrary>(path).Then(library =>
            library.Colours.Index().FirstOrDefault(c => library.Colours.Take(c.Index).Any(e => e.Id == c.Item.Id)) is { Item: { } twice } at
                ? Reading.Refused<ColourLibrary>(new InputFault(
                    Path.GetFileName(path), null, Invariant($"/colours/{at.Index}/id"), Invariant($"'{twice.Id}' twice"), "each id once"))
                : Reading.Of(library));
    }

    /// <inheritdoc/>
    public byte[] LibraryText(ColourLibrary library) => LaydownJson.ToBytes(library);

    /// <inheritdoc/>
    public byte[] Profile(ProfileTables tables, IReadOnlyList<string> inkNames, InkLimits limits, string description) => OutputProfile.Write(
        tables, description, Rights, new OutputProfileOptions { Edition = IccEdition.V4, InkNames = inkNames, Limits = limits });

    /// <inheritdoc/>
    public byte[] Link(LinkTables tables, string description) =>
        DeviceLinkProfile.Write(tables, description, Rights, "CMYK of the same print", description);

    private static Reading<byte[]> Bytes(string path)
    {
        string name = Path.GetFileName(path);
        try
        {
            FileInfo file = new(path);
            return !file.Exists
                ? Reading.Refused<byte[]>(new InputFault(name, null, "file", "no such file", "a readable file"))
                : file.Length > MostBytes
                    ? Reading.Refused<byte[]>(new InputFault(name, null, "file", Invariant($"{file.Length} bytes"), Invariant($"at most {MostBytes} bytes")))
                    : Reading.Of(File.ReadAllBytes(path));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return Reading.Refused<byte[]>(new InputFault(name, null, "file", "nothing that can be opened", "a readable file"));
        }
    }
}
