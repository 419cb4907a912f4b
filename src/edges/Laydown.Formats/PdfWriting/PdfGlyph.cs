namespace Laydown.Formats.PdfWriting;

/// <summary>One glyph of a line of text.</summary>
/// <param name="Id">Number of the glyph in the font file.</param>
/// <param name="XMm">Where it stands from the start of the line, mm.</param>
/// <param name="Text">The characters it stands for; empty where an earlier glyph stands for them.</param>
public readonly record struct PdfGlyph(int Id, double XMm, string Text);
