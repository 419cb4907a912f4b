namespace Laydown.Formats.PdfWriting;

/// <summary>A picture in a PDF file, to be drawn on its pages as often as wanted.</summary>
public sealed class PdfImage
{
    internal PdfImage(int objectId) => ObjectId = objectId;

    internal int ObjectId { get; }
}
