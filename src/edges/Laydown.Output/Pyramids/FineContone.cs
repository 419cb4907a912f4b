using Laydown.Formats.TiffWriting;
using Laydown.Measures;
using Laydown.Shop.Run;

namespace Laydown.Output.Pyramids;

/// <summary>Values of a contone press file, pixel by pixel.</summary>
internal static class FineContone
{
    /// <summary>The values, ink after ink.</summary>
    public static Reading<byte[]> Codes(PressFileAt file, PressPart part) => ContoneTiffReader.Open(file.Path).Then(reader =>
    {
        using (reader)
        {
            byte[] codes = new byte[reader.Inks * part.Rows * part.Columns];
            byte[] line = new byte[reader.Inks * part.Columns];
            for (int y = 0; y < part.Rows; y++)
            {
                reader.ReadRow(part.Top + y, part.Left, line);
                for (int ink = 0; ink < reader.Inks; ink++)
                {
                    Span<byte> into = codes.AsSpan(((ink * part.Rows) + y) * part.Columns, part.Columns);
                    for (int x = 0, at = ink; x < into.Length; x++, at += reader.Inks)
                        into[x] = line[at];
                }
            }

            return Reading.Of(codes);
        }
    });
}
