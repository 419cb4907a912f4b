using Laydown.Formats.PdfWriting;

namespace Laydown.Demo.Files;

/// <summary>PDF files of the demo, all dated on the same day.</summary>
internal static class PdfFiles
{
    /// <summary>White ink: on a screen hardly anything.</summary>
    public static PdfSpot White { get; } = new("White", 0.12, 0, 0.04, 0);

    /// <summary>The line a blade follows: on a screen a clear colour of its own.</summary>
    public static PdfSpot Cut { get; } = new("Cut", 0.1, 0.75, 0, 0);

    public static PdfLayer WhiteLayer { get; } = new("White", "White", null, Visible: true);

    public static PdfLayer CutLayer { get; } = new("Cut", "Structural", "Cutting", Visible: true);

    /// <summary>Writes a file with RGB colours under a profile, or without.</summary>
    public static void Write(string path, string title, bool profiled, Action<PdfFile> draw) => DemoFiles.Write(path, stream =>
    {
        PdfFile file = new(stream, title, DemoWorld.Made, profiled ? DemoFiles.Resource("sRGB2014.icc") : null);
        draw(file);
        file.Close();
    });
}
