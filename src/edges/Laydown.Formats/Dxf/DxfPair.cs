namespace Laydown.Formats.Dxf;

/// <summary>A group: a code, and a value on the line that follows.</summary>
/// <param name="Code">Group code.</param>
/// <param name="Text">The value, blanks at both ends taken off.</param>
/// <param name="Line">Line of the code in the file, from 1.</param>
internal readonly record struct DxfPair(int Code, string Text, int Line);
