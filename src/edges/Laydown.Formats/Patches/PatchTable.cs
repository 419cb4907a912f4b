using Laydown.Colour.Readings;

namespace Laydown.Formats.Patches;

/// <summary>A table of readings as its file gives it, whatever the format; every value still text.</summary>
/// <param name="File">Name of the file, for faults.</param>
/// <param name="Name">Name of the set for people.</param>
/// <param name="Measured">What the file says of its measuring.</param>
/// <param name="InkLetters">Letters of the inks where the file gives them apart from its fields, such as CMYKOGV; else empty.</param>
/// <param name="Fields">Names of the fields.</param>
/// <param name="Rows">Rows, each with one value for each field.</param>
/// <param name="Notes">What the reader had to decide so far.</param>
internal sealed record PatchTable(
    string File,
    string Name,
    MeasuredHow Measured,
    string InkLetters,
    IReadOnlyList<string> Fields,
    IReadOnlyList<PatchRow> Rows,
    IReadOnlyList<string> Notes)
{
    /// <summary>Fields that are inks whatever their names; the names are the inks'.</summary>
    public IReadOnlyList<string> SureInks { get; init; } = [];

    /// <summary>What a row is called in faults: a line of text or an object of XML.</summary>
    public string RowWord { get; init; } = "line";
}
