using System.Text;
using QRCoder;
using SkiaSharp;

namespace Laydown.Output.Documents;

/// <summary>A QR code as dark modules.</summary>
internal sealed class QrMatrix
{
    private readonly bool[][] dark;

    private QrMatrix(bool[][] dark) => this.dark = dark;

    /// <summary>Modules on a side, without quiet zone.</summary>
    internal int Side => dark.Length;

    /// <summary>The code of a text, a quarter of it recoverable.</summary>
    internal static QrMatrix Of(string text)
    {
        using QRCodeGenerator generator = new();
        using QRCodeData data = generator.CreateQrCode(text, QRCodeGenerator.ECCLevel.Q);

        // The generator puts four light modules around; the papers keep their own quiet zone.
        int side = data.ModuleMatrix.Count - 8;
        return new([.. Enumerable.Range(4, side).Select(y => Enumerable.Range(4, side).Select(x => data.ModuleMatrix[y][x]).ToArray())]);
    }

    /// <summary>The modules as SVG path data, one unit a module.</summary>
    internal string PathData()
    {
        StringBuilder data = new();
        foreach ((int x, int y, int length) in Bars())
            data.Append(Invariant($"M{x} {y}h{length}v1h-{length}z"));
        return data.ToString();
    }

    /// <summary>Draws the code, <paramref name="size"/> points on a side.</summary>
    internal void Draw(SKCanvas canvas, float left, float top, float size)
    {
        float module = size / Side;
        using SKPaint paint = new() { Color = SKColors.Black, IsAntialias = false };
        foreach ((int x, int y, int length) in Bars())
            canvas.DrawRect(left + (x * module), top + (y * module), length * module, module, paint);
    }

    /// <summary>Dark bars, row by row from the top, in modules.</summary>
    internal IEnumerable<(int X, int Y, int Length)> Bars()
    {
        for (int y = 0; y < Side; y++)
        {
            for (int x = 0; x < Side; x++)
            {
                int from = x;
                while (x < Side && dark[y][x])
                    x++;
                if (x > from)
                    yield return (from, y, x - from);
            }
        }
    }
}
