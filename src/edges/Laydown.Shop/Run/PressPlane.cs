using System.Text.Json.Serialization;
using Laydown.Press.Inks;

namespace Laydown.Shop.Run;

/// <summary>One ink of one layer of a made sheet.</summary>
/// <param name="Number">From 1 over all layers, in print order.</param>
/// <param name="Layer">Layer from 1.</param>
/// <param name="Name">Name of the ink as its file has it.</param>
/// <param name="Role">The ink.</param>
/// <param name="FileName">Press file that holds it.</param>
/// <param name="Channel">Ink from 0 within that file.</param>
/// <param name="Reversed">Whether the file has it printed on the turned sheet: its rows run from right to left as seen on the first face.</param>
/// <param name="Upended">Whether the sheet was turned head to foot instead: its last row comes first.</param>
public sealed record PressPlane(
    int Number, int Layer, string Name, InkRole Role, string FileName, int Channel, bool Reversed, bool Upended = false)
{
    [JsonIgnore]
    internal PressFileAt File { get; init; } = new("", "", []);
}
