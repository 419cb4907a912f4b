namespace Laydown.Formats.Patches;

/// <summary>One row of a table of readings, not yet understood.</summary>
/// <param name="Line">Line of the file, or number of the object in it, from 1.</param>
/// <param name="Values">One text for each field.</param>
internal sealed record PatchRow(int Line, IReadOnlyList<string> Values);
